//! A screen as text, as a person would read it out.

use fermentside::app::{Part, Run, Screen, Tag, What};

/// The whole screen.
pub fn told(screen: &Screen) -> String {
    let mut text = String::new();
    for part in screen.notices.iter().chain(&screen.main).chain(&screen.undo) {
        tell(part, 0, &mut text);
    }
    let places: Vec<_> = screen
        .places
        .iter()
        .map(|place| if place.here { format!("*{}*", place.label) } else { place.label.to_owned() })
        .collect();
    text.push_str(&format!("---\n{}\n", places.join(" | ")));
    text.replace('\u{A0}', " ")
}

fn line(runs: &[Run]) -> String {
    runs.iter().map(|run| run.text.clone()).collect::<Vec<_>>().join(" ")
}

fn tell(part: &Part, depth: usize, text: &mut String) {
    let said = match &part.what {
        What::Heading(level, words) => format!("{} {words}", "#".repeat(usize::from(*level))),
        What::Text(_, words) => words.clone(),
        What::Line(_, runs) => line(runs),
        What::Link(link) => {
            let here = if link.here { "*" } else { "" };
            format!("<{here}{}{here}> {}", line(&link.runs), link.address)
        }
        What::Action(button) => format!("[{}]", button.label),
        What::File(field) => {
            format!("{}: [a file {}]  ? {}", field.label, field.accept, field.hint)
        }
        What::HandOut(file) => format!("[{}] hands out {}", file.label, file.file),
        What::Answer(answer) => {
            format!("= {}: {} {} | {}", answer.label, answer.main, answer.beside, answer.below)
        }
        What::Timer(judged) => format!("({}) {}", judged.word, judged.sentence),
        What::Verdict(judged) => {
            let mut lines = vec![format!("({}) {}", judged.word, judged.sentence)];
            let (figure, beside) = &judged.figure;
            let said = format!("  = {}: {figure} {beside}", judged.label);
            lines.extend((!figure.is_empty()).then_some(said));
            lines.extend(judged.reasons.iter().map(|reason| format!("  - {reason}")));
            lines.extend((!judged.next.is_empty()).then(|| format!("  > {}", judged.next)));
            lines.join("\n")
        }
        What::Number(field) => {
            let units: Vec<_> = field
                .units
                .iter()
                .map(
                    |unit| {
                        if *unit == field.unit { format!("*{unit}*") } else { (*unit).to_owned() }
                    },
                )
                .collect();
            let mut said = format!("{}: [{}] {}", field.label, field.text, units.join(" "));
            for (sign, more) in [("?", &field.hint), ("~", &field.understood), ("!", &field.error)]
            {
                if !more.is_empty() {
                    said.push_str(&format!("  {sign} {more}"));
                }
            }
            said
        }
        What::Words(field) => format!("{}: [{}] {}", field.label, field.text, field.error),
        What::Choice(choice) | What::Pick(choice) => {
            let options: Vec<_> = choice
                .options
                .iter()
                .map(|(stored, words)| {
                    let mark = if *stored == choice.chosen { "(x)" } else { "( )" };
                    format!("{mark} {words}")
                })
                .collect();
            format!("{}: {}", choice.label, options.join("  "))
        }
        What::Tick(tick) => format!("{} {}", if tick.on { "[x]" } else { "[ ]" }, tick.label),
        What::Moment(field) => {
            let text = if field.text.is_empty() { field.now_words } else { &field.text };
            format!("{}: [{text}]", field.label)
        }
        What::Slider(slider) => format!("{}: --{}--", slider.label, slider.text),
        What::Stem(stem) => format!("|{}| {} {}", stem.label, stem.value_text, stem.corrected_text),
        What::Figures(rows) => {
            let rows: Vec<_> =
                rows.iter().map(|(name, figure)| format!("{name}: {figure}")).collect();
            rows.join("\n")
        }
        What::Table(table) => {
            let mut lines = vec![table.head.join(" | ")];
            lines.extend(table.rows.iter().map(|row| row.join(" | ")));
            lines.join("\n")
        }
        What::Items(_, items) => {
            let items: Vec<_> = items
                .iter()
                .map(|item| format!("- {} {}", item.mark, item.text).replace("-  ", "- "))
                .collect();
            items.join("\n")
        }
        What::Worked(working) => {
            let mut lines = vec![];
            for (head, rows) in &working.parts {
                lines.push(format!("{head}:"));
                lines.extend(rows.iter().map(|row| format!("  {} = {}", row.name, row.value)));
            }
            lines.join("\n")
        }
        What::Drawing(drawing) => format!("<<{}: {}>>", drawing.title, drawing.description),
        What::Outcome(why) if why.is_empty() => String::new(),
        What::Outcome(why) => format!("!! {why}"),
        What::Fold(fold) => {
            let sign = if fold.open { "v" } else { ">" };
            let beside = if fold.beside.is_empty() { "" } else { " | " };
            format!("{sign} {}{beside}{}", fold.summary, line(&fold.beside))
        }
        What::Group(group) if group.tag == Tag::Li => "-".to_owned(),
        What::Group(group) => group.label.clone(),
    };
    for one in said.lines().filter(|line| !line.trim().is_empty()) {
        text.push_str(&format!("{}{}\n", "  ".repeat(depth), one.trim_end()));
    }
    let hidden = matches!(&part.what, What::Fold(fold) if !fold.open);
    if !hidden {
        let deeper = matches!(part.what, What::Fold(_) | What::Group(_)) && !said.trim().is_empty();
        for inner in &part.parts {
            tell(inner, depth + usize::from(deeper), text);
        }
    }
}
