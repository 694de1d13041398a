//! Who is answered at the door of this machine, and what comes with every answer.

use crate::client::{JOB, Shop};
use serde_json::json;

fn get(host: &str, path: &str, more: &str) -> String {
    format!("GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n{more}\r\n")
}

#[test]
fn only_our_own_addresses_are_answered() {
    let shop = Shop::open();
    let port = shop.here().port();
    for host in ["localhost", "127.0.0.1", "[::1]", "LOCALHOST"] {
        shop.ask_raw(&get(&format!("{host}:{port}"), "/", "")).expect(200);
    }
    let wrong_port = format!("localhost:{}", port.wrapping_add(1));
    let dressed_up = format!("localhost:{port}.example.com");
    let user = format!("localhost@example.com:{port}");
    for host in ["localhost", "example.com", &format!("example.com:{port}"), &wrong_port, &dressed_up, &user, ""] {
        let answer = shop.ask_raw(&get(host, "/api/1/jobs", "")).expect(421);
        assert_eq!(answer.json()["code"], "other-host");
    }
    let twice = format!("Host: localhost:{port}\r\n");
    let answer = shop.ask_raw(&get(&format!("localhost:{port}"), "/", &twice));
    assert!([400, 421].contains(&answer.status), "{answer:?}");
}

#[test]
fn pages_of_other_sites_can_change_and_read_nothing() {
    let shop = Shop::open();
    let host = format!("localhost:{}", shop.here().port());
    let id = "a".repeat(32);
    let put = |more: &str, n: u32| {
        let body = json!({ "base": 0, "text": JOB, "device": "x", "save": format!("{n:032x}") }).to_string();
        let head = format!("PUT /api/1/jobs/{id} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n{more}");
        shop.ask_raw(&format!("{head}Content-Type: application/json\r\nContent-Length: {}\r\n\r\n{body}", body.len()))
    };
    let port = shop.here().port();
    for origin in ["http://example.com", "null", "https://localhost", &format!("https://localhost:{port}"), ""] {
        assert_eq!(put(&format!("Origin: {origin}\r\n"), 1).expect(403).json()["code"], "other-site");
    }
    put("Sec-Fetch-Site: cross-site\r\n", 1).expect(403);
    put("Sec-Fetch-Site: same-site\r\n", 1).expect(403);
    put(&format!("Origin: http://{host}\r\nSec-Fetch-Site: same-origin\r\n"), 1).expect(200);
    put("", 2).expect(200);
    shop.ask_raw(&get(&host, "/api/1/jobs", "Sec-Fetch-Site: cross-site\r\n")).expect(403);
    // A link to the app may stand anywhere.
    let answer = shop.ask_raw(&get(&host, "/", "Sec-Fetch-Site: cross-site\r\n")).expect(200);
    assert_eq!(answer.header("access-control-allow-origin"), None);
    // A form can't write.
    let form =
        format!("POST /api/1/jobs/{id} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n");
    shop.ask_raw(&form).expect(405);
}

#[test]
fn every_answer_tells_the_browser_what_to_forbid() {
    let shop = Shop::open();
    for path in ["/", "/api/1/jobs", "/nothing", "/api/1/nothing", "/workshop", "/api/1/jobs/x"] {
        let answer = shop.ask("GET", path, None);
        let policy = answer.header("content-security-policy").unwrap();
        assert!(
            policy.contains("default-src 'none'") && policy.contains("script-src 'self' 'wasm-unsafe-eval';"),
            "{policy}"
        );
        assert!(!policy.contains("unsafe-inline"));
        assert_eq!(answer.header("x-content-type-options"), Some("nosniff"));
        assert_eq!(answer.header("referrer-policy"), Some("no-referrer"));
        assert_eq!(answer.header("cross-origin-opener-policy"), Some("same-origin"));
        assert_eq!(answer.header("cross-origin-resource-policy"), Some("same-origin"));
        assert_eq!(answer.header("strict-transport-security"), None);
    }
    assert_eq!(shop.ask("GET", "/api/1/jobs", None).header("cache-control"), Some("no-store"));
}

#[test]
fn our_own_pages_keep_to_the_policy() {
    let shop = Shop::open_to_network();
    let page = shop.ask("GET", "/workshop", None).expect(200);
    let page = String::from_utf8(page.body).unwrap();
    assert!(page.contains("<svg"), "{page}");
    for forbidden in ["style=", "<style", "<script>", "onclick", "onload", "{square}"] {
        assert!(!page.contains(forbidden), "{forbidden}: {page}");
    }
}

#[test]
fn files_of_the_app_come_compressed_and_with_their_kind() {
    let shop = Shop::open();
    let wasm = shop.ask("GET", "/assets/core-1a2b.wasm", None).expect(200);
    assert_eq!(wasm.header("content-type"), Some("application/wasm"));
    assert!(wasm.header("cache-control").unwrap().contains("immutable"));
    let host = format!("localhost:{}", shop.here().port());
    let page = shop.ask_raw(&get(&host, "/", "Accept-Encoding: br\r\n")).expect(200);
    assert_eq!((page.header("content-encoding"), page.header("vary")), (Some("br"), Some("accept-encoding")));
    let tag = page.header("etag").unwrap().to_owned();
    shop.ask_raw(&get(&host, "/", &format!("If-None-Match: {tag}\r\n"))).expect(304);
}

#[test]
fn no_path_reaches_the_file_system() {
    let shop = Shop::open();
    for path in [
        "/jobs.sqlite",
        "/../jobs.sqlite",
        "/assets/../../jobs.sqlite",
        "/%2e%2e/jobs.sqlite",
        "/..%2fjobs.sqlite",
        "/assets/..%5c..%5cjobs.sqlite",
        "//etc/passwd",
        "/etc/passwd",
        "/assets/",
        "/index.html%00.png",
        "/seatcut-workshop.key",
        "/seatcut-workshop.crt",
    ] {
        let answer = shop.ask("GET", path, None);
        assert!([400, 404].contains(&answer.status), "{path}: {answer:?}");
    }
}

#[test]
fn heads_have_a_limit() {
    let shop = Shop::open();
    let host = format!("localhost:{}", shop.here().port());
    let long = format!("X-Long: {}\r\n", "x".repeat(40_000));
    assert!([400, 431].contains(&shop.ask_raw(&get(&host, "/", &long)).status));
    let many: String = (0..200).map(|n| format!("X-{n}: 1\r\n")).collect();
    assert!([400, 431].contains(&shop.ask_raw(&get(&host, "/", &many)).status));
}
