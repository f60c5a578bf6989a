// Pictures held against those that are kept, in the page of a server that has both.

// A picture of the screen in a quarter of its size, on a canvas.
const reduced = async (address, width) => {
  const image = await createImageBitmap(await (await fetch(address, { cache: 'no-store' })).blob());
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = Math.round(image.height * width / image.width);
  const to = canvas.getContext('2d', { willReadFrequently: true });
  to.imageSmoothingQuality = 'high';
  to.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
};

// Of each block of 4 x 4 (16 pixels of the screen each way) the mean of all three colours, and from the darkest
// to the lightest how far it is: what has letters or lines from what is blank.
const blocks = (canvas) => {
  const { width, height } = canvas;
  const { data } = canvas.getContext('2d').getImageData(0, 0, width, height);
  const rows = [];
  for (let y = 0; y + 4 <= height; y += 4) {
    const row = [];
    for (let x = 0; x + 4 <= width; x += 4) {
      const sum = [0, 0, 0];
      let [dark, light] = [255, 0];
      for (let at = 0; at < 16; at += 1) {
        const from = 4 * ((y + (at >> 2)) * width + x + (at & 3));
        for (let colour = 0; colour < 3; colour += 1) sum[colour] += data[from + colour] / 16;
        const grey = (data[from] + data[from + 1] + data[from + 2]) / 3;
        [dark, light] = [Math.min(dark, grey), Math.max(light, grey)];
      }
      row.push({ mean: sum, range: light - dark });
    }
    rows.push(row);
  }
  return rows;
};

// Another font moves a word by a block and, where a line more is needed, what is below by two or three.
const [DOWN, ACROSS] = [3, 1];
// So far from each other two means, and two ranges, are another block.
const [FAR, ROUGH] = [24, 28];

const differ = (one, other) => Math.max(
  ...one.mean.map((part, at) => Math.abs(part - other.mean[at]) / FAR),
  Math.abs(one.range - other.range) / ROUGH,
);

// The share of blocks that have none like them where they stand in the other picture.
const unlike = (one, other) => {
  let off = 0, all = 0;
  one.forEach((row, y) => row.forEach((block, x) => {
    let nearest = Infinity;
    for (let down = -DOWN; down <= DOWN; down += 1) for (let across = -ACROSS; across <= ACROSS; across += 1) {
      const there = other[y + down]?.[x + across];
      if (there) nearest = Math.min(nearest, differ(block, there));
    }
    all += 1;
    if (nearest > 1) off += 1;
  }));
  return off / all;
};

window.held = async (kept, taken, width) => {
  const [before, now] = [await reduced(kept, width), await reduced(taken, width)];
  if (before.height !== now.height) return 1;
  const [a, b] = [blocks(before), blocks(now)];
  return Math.max(unlike(a, b), unlike(b, a));
};

window.small = async (taken, width) => {
  const canvas = await reduced(taken, width);
  const blob = await new Promise((go) => canvas.toBlob(go, 'image/png'));
  return [...new Uint8Array(await blob.arrayBuffer())];
};
