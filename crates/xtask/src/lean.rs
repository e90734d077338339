//! Scripts and styles without what only their readers need: whole-line comments and the indentation.

/// A script or a style as it is served. One whose text in backticks runs over lines is left as it is, because there an
/// indentation may mean something.
pub(crate) fn lean(script: &str) -> String {
    let mut out = String::with_capacity(script.len());
    let mut inside_comment = false;
    for line in script.lines().map(str::trim) {
        if line.matches('`').count() % 2 == 1 {
            return script.to_owned();
        }
        let begins = line.starts_with("/*");
        if inside_comment || begins {
            inside_comment = !line.ends_with("*/");
            // Code behind a comment on the same line is none of the scripts' habits.
            continue;
        }
        if line.is_empty() || line.starts_with("//") {
            continue;
        }
        out.push_str(line);
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::lean;

    #[test]
    fn comments_and_indentation_go_and_code_stays() {
        let script = "// Why.\nif (a) {\n    /* what */\n    b(\"// no comment\");\n}\n/**\n * @param c\n */\nlet d;\n";
        assert_eq!(lean(script), "if (a) {\nb(\"// no comment\");\n}\nlet d;\n");
    }

    #[test]
    fn text_over_lines_is_left_alone() {
        let script = "const a = `one\n  two`;\n// end\n";
        assert_eq!(lean(script), script);
    }
}
