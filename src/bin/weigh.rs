//! Weighs a built page as it travels, and refuses one that is too heavy: `weigh [FOLDER]`.

use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

/// The most that a first visit may transfer, compressed with brotli.
const LIMIT: usize = 460_000;

/// Bytes as they lie, and as two kinds of host send them.
#[derive(Default)]
struct Weight {
    raw: usize,
    gzip: usize,
    brotli: usize,
}

fn main() -> ExitCode {
    let folder = env::args().nth(1).unwrap_or_else(|| "dist".to_owned());
    match weigh_folder(Path::new(&folder)) {
        Ok(total) if total.brotli <= LIMIT => ExitCode::SUCCESS,
        Ok(total) => {
            eprintln!("weigh: {} bytes are more than the {LIMIT} allowed", total.brotli);
            ExitCode::FAILURE
        }
        Err(error) => {
            eprintln!("weigh: {folder}: {error}");
            ExitCode::FAILURE
        }
    }
}

/// Prints each file's weight, the heaviest first. Everything counts: the offline worker fetches it all.
fn weigh_folder(folder: &Path) -> io::Result<Weight> {
    let mut rows = vec![];
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_type()?.is_file() {
            let name = entry.file_name().to_string_lossy().into_owned();
            rows.push((name, weigh(&fs::read(entry.path())?)?));
        }
    }
    rows.sort_by_key(|(_, weight)| std::cmp::Reverse(weight.brotli));
    let mut total = Weight::default();
    println!("{:>9} {:>9} {:>9}  bytes", "raw", "gzip", "brotli");
    for (name, weight) in rows {
        print_row(&name, &weight);
        total.raw += weight.raw;
        total.gzip += weight.gzip;
        total.brotli += weight.brotli;
    }
    print_row(&format!("all (at most {LIMIT} in brotli)"), &total);
    Ok(total)
}

fn print_row(name: &str, weight: &Weight) {
    println!("{:>9} {:>9} {:>9}  {name}", weight.raw, weight.gzip, weight.brotli);
}

fn weigh(bytes: &[u8]) -> io::Result<Weight> {
    let mut gzip = flate2::write::GzEncoder::new(vec![], flate2::Compression::best());
    gzip.write_all(bytes)?;
    let mut brotli = vec![];
    let best = brotli::enc::BrotliEncoderParams::default(); // quality 11
    brotli::BrotliCompress(&mut &bytes[..], &mut brotli, &best)?;
    Ok(Weight { raw: bytes.len(), gzip: gzip.finish()?.len(), brotli: brotli.len() })
}
