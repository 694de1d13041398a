//! Connections: how many, how long, how large their heads.

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::{GracefulShutdown, Watcher};
use hyper_util::service::TowerToHyperService;
use std::sync::Arc;
use std::time::Duration;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::net::TcpListener;
use tokio::sync::{Semaphore, watch};
use tokio::time::{sleep, timeout};
use tokio_rustls::TlsAcceptor;

/// Most connections at a time to one address; others wait to be taken.
const CONNECTIONS: usize = 512;
/// Longest time to shake hands, or to send the head of a request.
const HEAD_TIME: Duration = Duration::from_secs(20);
/// Longest head of a request, bytes.
const LONGEST_HEAD: usize = 16 * 1024;
/// Most lines in a head.
const HEAD_LINES: usize = 64;
/// How long requests in work may take to end when the workshop is closed.
const CLOSING: Duration = Duration::from_secs(5);
/// How long to wait when the system has no room for another connection.
const NO_ROOM: Duration = Duration::from_millis(100);

/// Serves one address until told to stop, then lets what is in work end.
pub(crate) async fn serve(
    listener: TcpListener,
    tls: Option<TlsAcceptor>,
    router: Router,
    mut stop: watch::Receiver<bool>,
) {
    let graceful = GracefulShutdown::new();
    let room = Arc::new(Semaphore::new(CONNECTIONS));
    loop {
        let Ok(place) = room.clone().acquire_owned().await else { break };
        let taken = tokio::select! {
            taken = listener.accept() => taken,
            _ = stop.wait_for(|stop| *stop) => break,
        };
        let Ok((stream, _)) = taken else {
            sleep(NO_ROOM).await;
            continue;
        };
        // Answers are short; they should not wait to be filled up. Where the system can't, they wait.
        let _ = stream.set_nodelay(true);
        let (tls, router, graceful) = (tls.clone(), router.clone(), graceful.watcher());
        tokio::spawn(async move {
            let _place = place;
            match tls {
                None => connection(stream, router, graceful).await,
                Some(tls) => {
                    if let Ok(Ok(stream)) = timeout(HEAD_TIME, tls.accept(stream)).await {
                        connection(stream, router, graceful).await;
                    }
                }
            }
        });
    }
    drop(listener);
    // Whoever is not done by then is cut off; what was answered is kept.
    let _ = timeout(CLOSING, graceful.shutdown()).await;
}

async fn connection(stream: impl AsyncRead + AsyncWrite + Unpin + 'static, router: Router, graceful: Watcher) {
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(HEAD_TIME)
        .max_buf_size(LONGEST_HEAD)
        .max_headers(HEAD_LINES)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(router));
    // A device that goes away in the middle is no fault of the workshop.
    let _ = graceful.watch(connection).await;
}
