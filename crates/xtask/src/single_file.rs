//! The page as one HTML file that opens from a phone's storage: everything inside, nothing fetched.
//!
//! The parts are in it as plain modules. Packed they would make the file a quarter smaller, and would be dead on a
//! browser that cannot unpack, which has nowhere else to fetch them from; the file is copied once.

use crate::{Outcome, digest, parts, project};
use std::fs;
use std::path::Path;

/// `cargo xtask single-file`: from `dist/` to `target/single/biteband.html`.
///
/// # Errors
///
/// When `dist/` holds no built page, or the page has a part that cannot be put inside.
pub(crate) fn run() -> Outcome {
    let file = project::single_file();
    let html = make(&project::dist())?;
    fs::create_dir_all(file.parent().unwrap_or(&file))?;
    fs::write(&file, &html)?;
    println!("The page as one file of {} bytes: {}", html.len(), file.display());
    Ok(())
}

fn make(dist: &Path) -> Outcome<String> {
    let page = fs::read_to_string(dist.join("index.html"))
        .map_err(|error| format!("{error}; build the page first: cargo xtask app --build-only"))?;
    let tag = |name: &str, mark: &str| {
        tags(&page, name)
            .find(|tag| tag.contains(mark))
            .ok_or_else(|| format!("the built page has no <{name}> with {mark}"))
    };
    let read = |address: &str| fs::read(dist.join(address.trim_start_matches("./")));
    let text = |address: &str| -> Outcome<String> { Ok(String::from_utf8(read(address)?)?) };

    let boot_tag = tag("script", "data-wasm")?;
    let style_tag = tag("link", "rel=\"stylesheet\"")?;
    let icon_tag = tag("link", "rel=\"icon\"")?;
    let policy_tag = tag("meta", "Content-Security-Policy")?;

    let style = text(attribute(style_tag, "href")?)?;
    let boot = text(attribute(boot_tag, "src")?)?;
    let mut glue = text(attribute(boot_tag, "data-js")?)?;
    for part in parts::fetched(&glue) {
        glue = parts::hold(&glue, &part, &read(&part)?)?;
    }
    let module = module_script(&glue, &read(attribute(boot_tag, "data-wasm")?)?)?;
    for (what, content) in [("script", &boot), ("script", &module), ("style", &style)] {
        if content.to_ascii_lowercase().contains(&format!("</{what}")) {
            return Err(format!("a {what} of the page would end itself early inside HTML").into());
        }
    }
    let policy = policy(attribute(policy_tag, "content")?, &[&boot, &module], &style);
    let icon = digest::base64(&read(attribute(icon_tag, "href")?)?);

    let mut single = page
        .replacen("<html ", "<html data-single=\"true\" ", 1)
        .replacen(
            policy_tag,
            &format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">"),
            1,
        )
        .replacen(
            icon_tag,
            &format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">"),
            1,
        )
        .replacen(style_tag, &format!("<style>{style}</style>"), 1)
        .replacen(&format!("{boot_tag}</script>"), &format!("<script>{boot}</script>"), 1)
        .replacen("</body>", &format!("<script type=\"module\">{module}</script>\n</body>"), 1);
    for kind in ["manifest", "modulepreload", "preload", "apple-touch-icon"] {
        single = single.replacen(tag("link", &format!("rel=\"{kind}\""))?, "", 1);
    }
    // The page's own tags, not what stands in a script or a style.
    let outside = tags(&single, "link").chain(tags(&single, "script "));
    if let Some(left) = outside.into_iter().find(|tag| tag.contains("=\"./")) {
        return Err(format!("the single file would still fetch {left}").into());
    }
    Ok(single)
}

/// The glue and the module as one script that hands its start function to the start script.
fn module_script(glue: &str, wasm: &[u8]) -> Outcome<String> {
    if glue.lines().any(|line| line.trim_start().starts_with("import ")) {
        return Err("the module's glue imports a file, which a single file cannot hold".into());
    }
    let start = glue
        .split_once(" as default")
        .and_then(|(before, _)| before.rsplit([' ', ',', '{']).next())
        .filter(|name| !name.is_empty())
        .ok_or("the module's glue exports no start function")?;
    let bytes = digest::base64(wasm);
    Ok(format!(
        "{glue}\nconst bytes = Uint8Array.from(atob(\"{bytes}\"), (letter) => letter.charCodeAt(0));\n\
         dispatchEvent(new CustomEvent(\"biteband:module\", {{ detail: () => {start}({{ module_or_path: bytes }}) }}));\n"
    ))
}

/// The page's policy with its own scripts and style named by hash, and nothing else to fetch.
fn policy(page: &str, scripts: &[&str], style: &str) -> String {
    let hash = |content: &str| format!("'{}'", digest::integrity(content.as_bytes()));
    let scripts: Vec<String> = scripts.iter().map(|script| hash(script)).collect();
    let parts = page.split(';').map(str::trim).filter(|part| {
        !["connect-src", "manifest-src", "worker-src"].iter().any(|kind| part.starts_with(kind))
    });
    parts
        .map(|part| {
            let own = if part.starts_with("script-src") {
                scripts.join(" ")
            } else if part.starts_with("style-src") {
                hash(style)
            } else {
                String::new()
            };
            part.replace("'self'", &own).replace("  ", " ")
        })
        .collect::<Vec<_>>()
        .join("; ")
}

/// Every start tag of a name, as it stands.
fn tags<'page>(page: &'page str, name: &str) -> impl Iterator<Item = &'page str> {
    let open = format!("<{name}");
    page.match_indices(&open)
        .filter_map(|(at, _)| page.get(at..)?.split_inclusive('>').next())
        .collect::<Vec<_>>()
        .into_iter()
}

fn attribute<'tag>(tag: &'tag str, name: &str) -> Outcome<&'tag str> {
    tag.split_once(&format!(" {name}=\""))
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(value, _)| value)
        .ok_or_else(|| format!("{tag} has no {name}").into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_and_attributes_are_read() {
        let page = "<head><link rel=\"icon\" href=\"./a.svg\"/><link rel=\"x\"></head>";
        assert_eq!(tags(page, "link").count(), 2);
        assert_eq!(attribute(tags(page, "link").next().unwrap(), "href").unwrap(), "./a.svg");
        assert!(attribute("<link>", "href").is_err());
    }

    #[test]
    fn policy_names_hashes_and_fetches_nothing() {
        let page = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
                    img-src 'self' data:; connect-src 'self'; base-uri 'none'";
        let single = policy(page, &["a", "b"], "c");
        assert!(!single.contains("'self'") && !single.contains("connect-src"));
        assert!(single.contains("style-src 'sha256-") && single.contains("img-src data:"));
        assert_eq!(single.matches("'sha256-").count(), 3);
    }

    #[test]
    fn start_function_is_found_in_the_glue() {
        let script = module_script("export { initSync, go as default };", b"\0asm").unwrap();
        assert!(script.contains("detail: () => go({ module_or_path: bytes })"));
        assert!(script.contains("atob(\"AGFzbQ==\")"));
        assert!(module_script("import x from './x.js';", b"").is_err());
        assert!(module_script("const a = 1;", b"").is_err());
    }
}
