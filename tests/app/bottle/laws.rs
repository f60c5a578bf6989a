//! No dose above the ceiling, whatever stands in the fields.

use super::*;
use proptest::prelude::*;

fn number(from: f64, to: f64) -> impl Strategy<Value = String> {
    prop_oneof![
        8 => (from..to).prop_map(|number| format!("{number:.2}")),
        1 => (from..to).prop_map(|number| format!("{number:.1}").replace('.', ",")),
        1 => prop::sample::select(vec!["", "0", "-3", "twelve", "1e9"]).prop_map(str::to_owned),
    ]
}

fn one_of(names: &'static [&'static str]) -> impl Strategy<Value = String> {
    prop::sample::select(names).prop_map(str::to_owned)
}

/// What may stand in the fields of a bottling, by name.
fn filled_in() -> impl Strategy<Value = Vec<(&'static str, String)>> {
    let glass = &["unknown_glass", "reusable_glass", "heavy_glass", "pet", "not_for_pressure"];
    let sugars = &[
        "sucrose",
        "glucose_anhydrous",
        "dry_malt_extract",
        "honey",
        "label",
        "wort",
        "own-syrup",
    ];
    let numbers = (number(0.5, 60.0), number(1.0, 4.5), number(0.0, 45.0), number(0.0, 45.0));
    let named = (
        one_of(glass),
        one_of(sugars),
        one_of(&["vessel", "bottles"]),
        one_of(&["330", "500", "750"]),
    );
    let past = (
        one_of(&["no", "yes", "maybe"]),
        number(0.0, 20.0),
        one_of(&["airlock", "sealed", "unsure"]),
        one_of(&["quiet", "still"]),
        one_of(&["rule", "more"]),
    );
    let more = (
        one_of(&["", "halves", "swing", "halves swing"]),
        one_of(&["", "I know"]),
        number(5.0, 100.0),
    );
    (numbers, named, past, more).prop_map(|(numbers, named, past, more)| {
        vec![
            ("beer", numbers.0),
            ("target", numbers.1),
            ("warmest", numbers.2),
            ("hottest", numbers.3),
            ("weakest", named.0),
            ("sugar", named.1),
            ("dosing", named.2),
            ("size", named.3),
            ("chilled", past.0),
            ("coldest", past.1),
            ("seal", past.2),
            ("working", past.3),
            ("dose-for", past.4),
            ("stock", more.0),
            ("because", more.1),
            ("label", more.2),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_dose_above_the_ceiling_whatever_stands_in_the_fields(
        fields in filled_in(),
        over: bool,
        slid in 0.5..5.0,
    ) {
        let ends = if over { [1.010, 1.010] } else { [1.021, 1.019] };
        let mut phone = brewed(&[(10.0, ends[0], None), (14.0, ends[1], None)]);
        // Where it is finished nobody is asked why.
        let stated = !over && fields.iter().any(|(name, text)| *name == "because" && !text.is_empty());
        for (field, text) in fields {
            let name = format!("bottling/b/{field}");
            phone.happens(Event::Typed { name, text, unit: String::new() });
        }
        for name in ["plan/worked", "what-if"] {
            phone.happens(Event::Folded { name: name.to_owned(), open: true });
        }
        phone.happens(Event::Slid { name: "what-if/target".to_owned(), value: slid });
        let (parts, text) = (phone.parts(), phone.text());
        let main = answer_in(&parts);
        let dosed = main.ends_with(" g") || main.ends_with(" L");
        let worst = figure(&parts, "At worst");
        let ceiling = figure(&parts, "Ceiling of the weakest bottle");
        if dosed {
            prop_assert!(worst <= ceiling && ceiling.is_some(), "{text}");
            prop_assert!(text.contains("(Go)") && !text.contains("(Stop)"), "{text}");
            prop_assert!(over || stated, "{text}");
        } else {
            prop_assert!(!text.contains("Sugar = ") && !text.contains("What to fill"), "{text}");
            prop_assert!(!text.contains("What the ± is made of"), "{text}");
        }
        phone.tap("It is bottled");
        let kept = record(&phone);
        prop_assert_eq!(kept.is_some(), dosed);
        if let Some(record) = kept {
            let ceiling = record.weakest.ceiling(false).expect("one that may be filled");
            prop_assert!(record.worst <= ceiling, "{record:?}");
            prop_assert!((record.worst.value() - worst.unwrap_or(0.0)).abs() < 0.006, "{worst:?}");
            prop_assert!(!phone.text().contains("may hold more than their usual ceiling"));
            prop_assert_eq!(!record.went_on_because.is_empty(), stated);
            let weighed = format!("{:.0} g", record.weighed.value());
            prop_assert!(main == weighed || main.ends_with(" L"), "{main} {weighed}");
        }
    }
}
