//! The door to the network: closed but for the paired.

use crate::client::Shop;
use serde_json::json;
use std::thread::sleep;
use std::time::Duration;

/// Longer than the least time between two tries.
const NEXT_TRY: Duration = Duration::from_millis(550);

fn wrong(code: &str) -> String {
    code.chars().map(|digit| if digit == '9' { '0' } else { '9' }).collect()
}

fn try_code(shop: &Shop, code: &str) -> crate::client::Answer {
    shop.ask_network("POST", "/api/1/pair", &[], Some(&json!({ "code": code, "device": "Phone\u{7} of the yard" })))
}

fn cookie(shop: &Shop) -> String {
    let paired = try_code(shop, &shop.code()).expect(200);
    let cookie = paired.header("set-cookie").unwrap().to_owned();
    for part in ["__Host-seatcut=", "; HttpOnly", "; Secure", "; SameSite=Strict", "; Path=/"] {
        assert!(cookie.contains(part), "{cookie}");
    }
    cookie.split(';').next().unwrap().to_owned()
}

#[test]
fn nothing_is_there_for_who_is_not_paired() {
    let shop = Shop::open_to_network();
    let hello = shop.ask_network("GET", "/api/1/hello", &[], None).expect(200).json();
    assert_eq!((&hello["paired"], &hello["needs_pairing"]), (&json!(false), &json!(true)));
    let sent_on = shop.ask_network("GET", "/", &[], None).expect(303);
    assert_eq!(sent_on.header("location"), Some("/pair"));
    let page = shop.ask_network("GET", "/pair", &[], None).expect(200);
    assert!(page.header("strict-transport-security").is_some());
    for path in ["/api/1/jobs", "/assets/core-1a2b.wasm", "/sw.js", "/icons", "/nothing"] {
        shop.ask_network("GET", path, &[], None).expect(401);
    }
    // Browsers ask for these without their cookies.
    shop.ask_network("GET", "/manifest.webmanifest", &[], None).expect(200);
    for cookie in ["", "__Host-seatcut=", "__Host-seatcut=0123456789abcdef0123456789abcdef", "seatcut=1"] {
        shop.ask_network("GET", "/api/1/jobs", &[("Cookie", cookie)], None).expect(401);
    }
    // What this machine's page shows is for this machine.
    for path in ["/api/1/pairing", "/api/1/devices", "/workshop"] {
        shop.ask_network("GET", path, &[], None).expect(401);
    }
}

#[test]
fn the_code_of_the_terminal_lets_a_device_in_once() {
    let shop = Shop::open_to_network();
    let code = shop.code();
    assert_eq!(shop.ask("GET", "/api/1/pairing", None).expect(200).json()["code"], code);
    let cookie = cookie(&shop);
    let with: &[(&str, &str)] = &[("Cookie", &cookie)];
    shop.ask_network("GET", "/api/1/jobs", with, None).expect(200);
    shop.ask_network("GET", "/", with, None).expect(200);
    assert_eq!(shop.ask_network("GET", "/api/1/hello", with, None).expect(200).json()["paired"], true);
    for path in ["/api/1/pairing", "/api/1/devices", "/workshop"] {
        shop.ask_network("GET", path, with, None).expect(404);
    }
    // A page of another site has the browser send the cookie in vain.
    let foreign: &[(&str, &str)] = &[("Cookie", &cookie), ("Origin", "https://example.com")];
    shop.ask_network("DELETE", &format!("/api/1/jobs/{}?revision=1", "a".repeat(32)), foreign, None).expect(403);
    sleep(NEXT_TRY);
    assert_ne!(shop.code(), code);
    try_code(&shop, &code).expect(403);

    // The device is known after a new start, until it is forgotten.
    let devices = shop.ask("GET", "/api/1/devices", None).expect(200).json();
    assert_eq!(devices[0]["name"], "Phone of the yard");
    let shop = Shop::open_in(shop.close(), Some(vec!["127.0.0.1".parse().unwrap()]));
    shop.ask_network("GET", "/api/1/jobs", with, None).expect(200);
    let id = &devices[0]["id"];
    shop.ask("DELETE", &format!("/api/1/devices/{id}"), None).expect(204);
    shop.ask("DELETE", &format!("/api/1/devices/{id}"), None).expect(404);
    shop.ask_network("GET", "/api/1/jobs", with, None).expect(401);
}

#[test]
fn guessing_is_slow_and_ends_the_code() {
    let shop = Shop::open_to_network();
    let code = shop.code();
    for n in 1..=5 {
        let answer = try_code(&shop, &wrong(&code)).expect(403).json();
        assert_eq!(answer["code"], if n < 5 { "wrong-code" } else { "code-ended" });
        let soon = try_code(&shop, &code).expect(429);
        assert!(soon.header("retry-after").is_some());
        sleep(NEXT_TRY);
    }
    assert_ne!(shop.code(), code);
    // Whoever guessed has to wait, and so does everybody else.
    try_code(&shop, &shop.code()).expect(429);
}

#[test]
fn neither_codes_nor_tokens_are_in_the_store() {
    let shop = Shop::open_to_network();
    let token = cookie(&shop).split_once('=').unwrap().1.to_owned();
    assert_eq!(token.len(), 32);
    let folder = shop.close();
    for entry in std::fs::read_dir(folder.path()).unwrap() {
        let bytes = std::fs::read(entry.unwrap().path()).unwrap();
        assert!(!bytes.windows(token.len()).any(|window| window == token.as_bytes()));
    }
}
