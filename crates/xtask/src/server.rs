//! A small server for the finished app, on this machine only.

mod answer;
mod media;
mod request;

use std::io::{self, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::Path;
use std::thread;
use std::time::Duration;

use crate::options::DEFAULT_PORT;
use crate::run::Outcome;
use answer::Answer;

/// So many requests at once; further ones wait in the system's queue.
const THREADS: usize = 8;
/// A connection that says nothing for so long is closed.
const PATIENCE: Duration = Duration::from_secs(5);
/// The longest request head that is read.
const LONGEST_HEAD: u64 = 16 * 1024;

/// Takes the port; 0 lets the system choose one.
pub fn listen(port: u16) -> Outcome<TcpListener> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|cause| match cause.kind() {
        io::ErrorKind::AddrInUse => {
            let other = if port == DEFAULT_PORT { 8081 } else { DEFAULT_PORT };
            format!(
                "Port {port} is taken by another program. Type: cargo xtask serve --port {other}"
            )
        }
        _ => format!("Port {port} could not be opened: {cause}. Choose another with --port."),
    })
}

/// Says where the app is, in a line that tests wait for.
pub fn announce(listener: &TcpListener, took: Duration, built: bool) -> Outcome {
    let address =
        listener.local_addr().map_err(|cause| format!("The port has no address: {cause}."))?;
    if !built {
        println!("Ready after {} s. Stop with Ctrl+C.", took.as_secs());
    }
    println!("listening on http://{address}");
    io::stdout().flush().map_err(|cause| format!("The terminal is gone: {cause}."))
}

/// Answers until the program is stopped.
pub fn run(listener: &TcpListener, dist: &Path) -> Outcome {
    if !dist.join("index.html").exists() {
        let folder = dist.display();
        return Err(format!("There is no finished app in {folder}. Type: cargo xtask build"));
    }
    thread::scope(|scope| {
        for _ in 0..THREADS {
            scope.spawn(|| {
                for stream in listener.incoming().filter_map(Result::ok) {
                    // A browser that went away is its own business.
                    converse(stream, dist).unwrap_or_default();
                }
            });
        }
    });
    Ok(())
}

/// One request and its answer.
fn converse(mut stream: TcpStream, dist: &Path) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let head = read_head(&mut stream)?;
    if head.is_empty() {
        return Ok(());
    }
    let (answer, with_body) = match request::parse(&head) {
        Ok(request) => (answer::answer(dist, &request), !request.head_only),
        Err(refusal) => (Answer::refusal(refusal), true),
    };
    stream.write_all(answer.head().as_bytes())?;
    if with_body {
        stream.write_all(&answer.body)?;
    }
    stream.flush()
}

/// Up to the empty line that ends a request head.
fn read_head(stream: &mut TcpStream) -> io::Result<String> {
    let mut head = Vec::new();
    let mut piece = [0; 2048];
    let mut stream = stream.take(LONGEST_HEAD);
    while !head.windows(4).any(|window| window == b"\r\n\r\n") {
        let count = stream.read(&mut piece)?;
        if count == 0 {
            break;
        }
        head.extend(piece.iter().take(count));
    }
    Ok(String::from_utf8_lossy(&head).into_owned())
}
