//! Saves against an open workshop, from many devices at a time.
//!
//! `saves load [SAVERS] [SECONDS]` opens a workshop of its own, measures saves
//! a second, and checks that every answered save is there.
//!
//! `saves until-gone PORT FILE` saves to a workshop that is open elsewhere until
//! it is gone, and writes what was answered to a file. `saves check PORT FILE`
//! checks that all of it is there.

use serde_json::{Value, json};
use std::error::Error;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};
use std::{env, fs, thread};

const JOB: &str = include_str!("../../../examples/whole-house.toml");

/// Savers and seconds when none are named.
const SAVERS: u64 = 200;
const SECONDS: u64 = 10;
/// Devices that save while the workshop is ended.
const SAVERS_UNTIL_GONE: u64 = 8;

type Outcome<T> = Result<T, Box<dyn Error + Send + Sync>>;

/// A connection that is kept open.
struct Client {
    stream: BufReader<TcpStream>,
    host: String,
}

impl Client {
    fn new(port: u16) -> Outcome<Self> {
        let stream = TcpStream::connect(("127.0.0.1", port))?;
        stream.set_nodelay(true)?;
        Ok(Self { stream: BufReader::new(stream), host: format!("127.0.0.1:{port}") })
    }

    fn ask(&mut self, method: &str, path: &str, body: &str) -> Outcome<(u16, Value)> {
        let head = format!("{method} {path} HTTP/1.1\r\nHost: {}\r\nContent-Type: application/json\r\n", self.host);
        let request = format!("{head}Content-Length: {}\r\n\r\n{body}", body.len());
        self.stream.get_mut().write_all(request.as_bytes())?;
        let mut line = String::new();
        self.stream.read_line(&mut line)?;
        let status = line.split(' ').nth(1).ok_or("the workshop is gone")?.parse()?;
        let mut length = 0;
        loop {
            line.clear();
            if self.stream.read_line(&mut line)? == 0 {
                return Err("the workshop is gone".into());
            }
            if let Some((name, value)) = line.split_once(':')
                && name.eq_ignore_ascii_case("content-length")
            {
                length = value.trim().parse()?;
            }
            if line == "\r\n" {
                break;
            }
        }
        let mut body = vec![0; length];
        self.stream.read_exact(&mut body)?;
        Ok((status, serde_json::from_slice(&body)?))
    }
}

/// The n-th text of a device: each is another job.
fn text(n: u64) -> String {
    JOB.replace("Whole house", &format!("House {n}"))
}

/// An answered save: of which job, under which number, which text.
#[derive(Clone, Debug)]
struct Answered {
    job: String,
    revision: i64,
    n: u64,
}

/// Saves one job again and again until told to stop or the workshop is gone.
fn saver(port: u16, device: u64, stop: &AtomicBool, answered: &Mutex<Vec<Answered>>) -> Outcome<()> {
    let mut client = Client::new(port)?;
    let started = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH)?.as_nanos() as u64;
    let job = format!("{device:016x}{started:016x}");
    let (mut base, mut n) = (0, 0);
    while !stop.load(Ordering::Relaxed) {
        n += 1;
        let save = format!("{started:016x}{device:08x}{n:08x}");
        let body = json!({ "base": base, "text": text(n), "device": format!("{device}"), "save": save });
        let (status, answer) = client.ask("PUT", &format!("/api/1/jobs/{job}"), &body.to_string())?;
        let revision =
            answer["revision"].as_i64().filter(|_| status == 200).ok_or_else(|| format!("{status}: {answer}"))?;
        base = revision;
        answered.lock().map_err(|_| "a saver fell over")?.push(Answered { job: job.clone(), revision, n });
    }
    Ok(())
}

/// Runs savers until told to stop. What was answered, and how many savers ended before.
fn savers(port: u16, count: u64, stop: &Arc<AtomicBool>) -> (Vec<Answered>, usize) {
    let answered = Mutex::new(Vec::new());
    let ended = thread::scope(|scope| {
        let savers: Vec<_> = (0..count)
            .map(|device| {
                scope.spawn({
                    let answered = &answered;
                    move || saver(port, device, stop, answered)
                })
            })
            .collect();
        savers
            .into_iter()
            .filter_map(|saver| saver.join().ok()?.err())
            .inspect(|error| {
                if !stop.load(Ordering::Relaxed) && count == SAVERS {
                    eprintln!("{error}");
                }
            })
            .count()
    });
    (answered.into_inner().unwrap_or_default(), ended)
}

/// How many of the answered saves are not as they were answered.
fn lost(port: u16, answered: &[Answered]) -> Outcome<usize> {
    let mut client = Client::new(port)?;
    let mut lost = 0;
    for one in answered {
        let (status, found) = client.ask("GET", &format!("/api/1/jobs/{}/history/{}", one.job, one.revision), "")?;
        lost += usize::from(status != 200 || found["text"] != text(one.n));
    }
    Ok(lost)
}

fn load(count: u64, seconds: u64) -> Outcome<()> {
    let folder = tempfile::tempdir()?;
    let options =
        workshop::Options { data: folder.path().to_owned(), port: 0, network: None, first_job: JOB.to_owned() };
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build()?;
    let assets = std::iter::empty::<(String, std::borrow::Cow<'static, [u8]>)>().collect();
    let running = runtime.block_on(workshop::start(options, assets, Box::new(|_| {})))?;
    let port = running.here.port();
    let stop = Arc::new(AtomicBool::new(false));
    let began = Instant::now();
    let timer = thread::spawn({
        let stop = stop.clone();
        move || {
            thread::sleep(Duration::from_secs(seconds));
            stop.store(true, Ordering::Relaxed);
        }
    });
    let (answered, ended) = savers(port, count, &stop);
    let took = began.elapsed().as_secs_f64();
    let _ = timer.join();
    let lost = lost(port, &answered)?;
    runtime.block_on(running.close());
    let rate = answered.len() as f64 / took;
    println!("{count} savers, {} saves in {took:.1} s: {rate:.0} a second, {lost} lost", answered.len());
    if lost > 0 || ended > 0 { Err(format!("{lost} saves lost, {ended} savers refused").into()) } else { Ok(()) }
}

fn until_gone(port: u16, file: &PathBuf) -> Outcome<()> {
    let (answered, _) = savers(port, SAVERS_UNTIL_GONE, &Arc::default());
    let lines: String = answered.iter().map(|one| format!("{} {} {}\n", one.job, one.revision, one.n)).collect();
    let mut log = fs::OpenOptions::new().create(true).append(true).open(file)?;
    Ok(log.write_all(lines.as_bytes())?)
}

fn check(port: u16, file: &PathBuf) -> Outcome<()> {
    let log = fs::read_to_string(file)?;
    let one = |line: &str| -> Option<Answered> {
        let mut words = line.split(' ');
        Some(Answered {
            job: words.next()?.to_owned(),
            revision: words.next()?.parse().ok()?,
            n: words.next()?.parse().ok()?,
        })
    };
    let answered: Vec<Answered> = log.lines().filter_map(one).collect();
    if answered.is_empty() {
        return Err("no save was ever answered".into());
    }
    let lost = lost(port, &answered)?;
    println!("{} answered saves, {lost} lost", answered.len());
    if lost > 0 { Err(format!("{lost} answered saves are lost").into()) } else { Ok(()) }
}

fn main() -> Outcome<()> {
    let words: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["until-gone", port, file] => until_gone(port.parse()?, &file.into()),
        ["check", port, file] => check(port.parse()?, &file.into()),
        [] | ["load"] => load(SAVERS, SECONDS),
        ["load", savers] => load(savers.parse()?, SECONDS),
        ["load", savers, seconds] => load(savers.parse()?, seconds.parse()?),
        _ => Err("saves load [SAVERS] [SECONDS] | until-gone PORT FILE | check PORT FILE".into()),
    }
}
