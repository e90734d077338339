//! Contrast of the page's colours: 7:1 for text, 3:1 for edges of controls and for drawings.
//!
//! Source of the formula and the limits: W3C, Web Content Accessibility Guidelines 2.2, success
//! criteria 1.4.6 and 1.4.11, relative luminance as defined there.

#[cfg(test)]
mod contrast {
    use std::collections::BTreeMap;
    use std::path::Path;

    type Tokens = BTreeMap<String, [f64; 3]>;

    /// Text on its ground.
    const TEXT: [(&str, &str); 12] = [
        ("ink", "ground"),
        ("ink", "plate"),
        ("soft", "ground"),
        ("soft", "plate"),
        ("ink", "warn-fill"),
        ("warn", "plate"),
        ("warn", "ground"),
        ("plate", "bite"),
        ("plate", "skate"),
        ("plate", "ink"),
        ("ink", "goal-fill"),
        ("ink", "band-fill"),
    ];

    /// Edges of controls and marks on drawings.
    const EDGES: [(&str, &str); 7] = [
        ("engrave", "plate"),
        ("engrave", "ground"),
        ("band", "plate"),
        ("goal", "plate"),
        ("warn", "warn-fill"),
        ("bite", "plate"),
        ("skate", "plate"),
    ];

    fn tokens(block: &str) -> Tokens {
        let mut found = Tokens::new();
        for declaration in block.split(';') {
            let Some((name, value)) = declaration.trim().split_once(':') else { continue };
            let (Some(name), Some(hex)) =
                (name.trim().strip_prefix("--"), value.trim().strip_prefix('#'))
            else {
                continue;
            };
            let channel = |at: usize| {
                f64::from(u8::from_str_radix(hex.get(at..at + 2).unwrap(), 16).unwrap())
            };
            found.insert(name.to_owned(), [channel(0), channel(2), channel(4)]);
        }
        found
    }

    /// The declarations behind a selector.
    fn block<'a>(sheet: &'a str, selector: &str) -> &'a str {
        let start =
            sheet.find(selector).unwrap_or_else(|| panic!("no {selector}")) + selector.len();
        sheet.get(start..).unwrap().trim_start_matches([' ', '{']).split('}').next().unwrap()
    }

    fn luminance(colour: [f64; 3]) -> f64 {
        let linear = colour.map(|c| {
            let c = c / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        });
        0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    }

    fn contrast(a: [f64; 3], b: [f64; 3]) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    fn sheet() -> String {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../web/static/app.css");
        std::fs::read_to_string(path).unwrap()
    }

    #[test]
    fn every_pair_of_tokens_keeps_its_contrast_in_both_themes() {
        let sheet = sheet();
        for theme in [":root {", ":root[data-theme=\"dim\"] {"] {
            let tokens = tokens(block(&sheet, theme));
            let of = |name: &str| *tokens.get(name).unwrap_or_else(|| panic!("no token {name}"));
            for (pairs, least) in [(&TEXT[..], 7.0), (&EDGES[..], 3.0)] {
                for (front, back) in pairs {
                    let found = contrast(of(front), of(back));
                    assert!(
                        found >= least,
                        "{theme} {front} on {back}: {found:.2}, {least} needed"
                    );
                }
            }
        }
    }

    #[test]
    fn the_dim_theme_is_the_same_by_choice_and_by_device() {
        let sheet = sheet();
        let chosen = tokens(block(&sheet, ":root[data-theme=\"dim\"] {"));
        let device = tokens(block(&sheet, ":root:not([data-theme=\"light\"]) {"));
        assert_eq!(chosen, device);
    }

    #[test]
    fn the_formula_gives_the_published_extremes() {
        // WCAG: black on white is 21:1, a colour on itself 1:1.
        assert!((contrast([0.0; 3], [255.0; 3]) - 21.0).abs() < 1e-9);
        assert!((contrast([9.0, 80.0, 7.0], [9.0, 80.0, 7.0]) - 1.0).abs() < 1e-12);
    }
}
