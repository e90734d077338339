//! A small web server for the built page, on this machine alone.

use crate::Outcome;
use std::fs;
use std::path::{Path, PathBuf};
use std::thread;
use tiny_http::{Header, Method, Request, Response, Server};

const FIRST_PORT: u16 = 8740;
/// So many requests are answered at once: more than the six connections that a browser opens to one address, because
/// one whose answer it does not read yet must not hold up the others.
const AT_ONCE: usize = 8;

/// Serves a folder until the program is ended. Without a port the first free one from 8740 on is taken: the same
/// one each time where possible, because a browser keeps records by address.
///
/// # Errors
///
/// When the port is taken.
pub(crate) fn run(folder: &Path, port: Option<u16>) -> Outcome {
    let (server, port) = match port {
        Some(port) => (listen(port)?, port),
        None => (FIRST_PORT..FIRST_PORT + 10)
            .find_map(|port| Some((listen(port).ok()?, port)))
            .ok_or("the ports 8740 to 8749 are taken; choose one with --port")?,
    };
    println!("\nBiteband is at http://127.0.0.1:{port}/ (end with Ctrl+C)");
    serve(&server, folder);
    Ok(())
}

/// Answers until the program is ended.
fn serve(server: &Server, folder: &Path) {
    thread::scope(|scope| {
        for _ in 0..AT_ONCE {
            scope.spawn(|| {
                for request in server.incoming_requests() {
                    // A browser that went away while it was answered is no reason to stop.
                    if let Err(error) = answer(folder, request) {
                        eprintln!("a request was not answered: {error}");
                    }
                }
            });
        }
    });
}

fn listen(port: u16) -> Outcome<Server> {
    Server::http(("127.0.0.1", port))
        .map_err(|error| format!("port {port} cannot be used: {error}").into())
}

fn answer(folder: &Path, request: Request) -> Outcome {
    let reading = matches!(request.method(), Method::Get | Method::Head);
    let found = reading
        .then(|| file_for(folder, request.url()))
        .flatten()
        .and_then(|path| Some((fs::read(&path).ok()?, media_type(&path))));
    let (status, body, kind) = match found {
        Some((body, kind)) => (200, body, kind),
        None if reading => (404, b"not found\n".to_vec(), "text/plain; charset=utf-8"),
        None => (405, b"only reading\n".to_vec(), "text/plain; charset=utf-8"),
    };
    let mut response = Response::from_data(body).with_status_code(status);
    for (name, value) in [("content-type", kind), ("cache-control", "no-cache")] {
        let header = Header::from_bytes(name, value).map_err(|()| "a header was refused")?;
        response.add_header(header);
    }
    Ok(request.respond(response)?)
}

/// The file an address names. Built files have plain names, so anything else is refused before the disk is asked.
fn file_for(folder: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = if path.is_empty() { "index.html" } else { path };
    let plain = |part: &str| {
        !part.is_empty()
            && !part.starts_with('.')
            && part.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte))
    };
    path.split('/').all(plain).then(|| folder.join(path))
}

fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        // A packed part (`.part`) too is bytes and nothing else: whatever knows its inside might unpack it.
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_lead_to_files_of_the_folder_and_nowhere_else() {
        let at = |url| file_for(Path::new("d"), url);
        assert_eq!(at("/"), Some(PathBuf::from("d/index.html")));
        assert_eq!(at("/?from=home"), Some(PathBuf::from("d/index.html")));
        assert_eq!(at("/icons/icon-192.png"), Some(PathBuf::from("d/icons/icon-192.png")));
        for url in ["/..", "/../Cargo.toml", "/a/../../b", "/%2e%2e/b", "//etc/passwd", "/a//b"] {
            assert_eq!(at(url), None, "{url}");
        }
        for url in ["/.git/config", "/a\\b", "", "http://elsewhere/", "/a\0"] {
            assert_eq!(at(url), None, "{url}");
        }
    }

    #[test]
    fn an_answer_that_nobody_reads_holds_up_no_other() {
        use std::io::{Read, Write};
        use std::net::TcpStream;
        use std::time::Duration;

        let folder = std::env::temp_dir().join(format!("biteband-serve-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        // More than what lies between two programs of one machine.
        fs::write(folder.join("large.wasm"), vec![0; 32 << 20]).unwrap();
        fs::write(folder.join("small.js"), "1").unwrap();
        let server = Server::http("127.0.0.1:0").unwrap();
        let address = server.server_addr().to_ip().unwrap();
        let own = folder.clone();
        thread::spawn(move || serve(&server, &own));
        let ask = |path: &str| {
            let mut stream = TcpStream::connect(address).unwrap();
            stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
            write!(stream, "GET {path} HTTP/1.1\r\nHost: here\r\n\r\n").unwrap();
            let mut start = [0; 12];
            stream.read_exact(&mut start).unwrap();
            (stream, start)
        };
        // Five are begun and not read on; the streams stay open until the end.
        let unread: Vec<_> = (0..5).map(|_| ask("/large.wasm")).collect();
        assert_eq!(ask("/small.js").1, *b"HTTP/1.1 200");
        drop(unread);
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn the_module_has_the_type_that_browsers_stream() {
        assert_eq!(media_type(Path::new("a_bg.wasm")), "application/wasm");
        assert_eq!(media_type(Path::new("m.webmanifest")), "application/manifest+json");
        assert_eq!(media_type(Path::new("a-mark.part")), "application/octet-stream");
    }
}
