//! The thread that writes: what waits at the same time goes into one transaction.

use super::StoreError;
use rusqlite::Connection;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::thread::{self, JoinHandle};
use tokio::sync::{mpsc, oneshot};

/// Most saves that wait; who comes later waits before the queue.
const QUEUE: usize = 1024;

/// Most saves in one transaction. More would make the first of them wait long.
const BATCH: usize = 256;

/// Something to write. It gives what is to be done when it is known whether
/// the transaction that it was part of is on the disk.
type Task = Box<dyn FnOnce(Result<&Connection, StoreError>) -> Answering + Send>;
type Answering = Box<dyn FnOnce(Result<(), StoreError>) + Send>;

/// The thread and the queue before it.
#[derive(Debug)]
pub(super) struct Writer {
    queue: Option<mpsc::Sender<Task>>,
    thread: Option<JoinHandle<()>>,
}

impl Writer {
    pub(super) fn start(connection: Connection) -> Result<Self, StoreError> {
        let (queue, waiting) = mpsc::channel(QUEUE);
        let thread = thread::Builder::new()
            .name("store".to_owned())
            .spawn(move || write(&connection, waiting))
            .map_err(|error| StoreError::Other(error.to_string()))?;
        Ok(Self { queue: Some(queue), thread: Some(thread) })
    }

    /// Runs something on the writing connection. It is answered when its transaction is on the disk; when it fails,
    /// nothing of it is kept, and others in the same transaction are not disturbed.
    pub(super) async fn run<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Connection) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (answer, answered) = oneshot::channel();
        let task: Task = Box::new(move |connection| {
            let result = connection.and_then(|connection| apart(connection, work));
            Box::new(move |committed| {
                // Who asked may have gone away; what was saved is saved.
                let _ = answer.send(committed.and(result));
            })
        });
        let queue = self.queue.as_ref().ok_or(StoreError::Stopped)?;
        queue.send(task).await.map_err(|_| StoreError::Stopped)?;
        answered.await.map_err(|_| StoreError::Stopped)?
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        drop(self.queue.take());
        if let Some(thread) = self.thread.take() {
            // A thread that fell over has nothing more to say.
            let _ = thread.join();
        }
    }
}

fn write(connection: &Connection, mut waiting: mpsc::Receiver<Task>) {
    while let Some(first) = waiting.blocking_recv() {
        if let Err(error) = connection.execute_batch("BEGIN IMMEDIATE") {
            first(Err(error.into()))(Ok(()));
            continue;
        }
        let mut answering = vec![first(Ok(connection))];
        while answering.len() < BATCH {
            let Ok(next) = waiting.try_recv() else { break };
            answering.push(next(Ok(connection)));
        }
        let committed = connection.execute_batch("COMMIT").map_err(StoreError::from);
        if committed.is_err() && !connection.is_autocommit() {
            // What SQLite could not commit it can always drop.
            let _ = connection.execute_batch("ROLLBACK");
        }
        let why = committed.err();
        for answer in answering {
            answer(why.clone().map_or(Ok(()), Err));
        }
    }
}

/// Runs one piece of work so that its failure undoes only itself.
fn apart<T>(connection: &Connection, work: impl FnOnce(&Connection) -> Result<T, StoreError>) -> Result<T, StoreError> {
    connection.execute_batch("SAVEPOINT work")?;
    let result = catch_unwind(AssertUnwindSafe(|| work(connection)))
        .unwrap_or_else(|_| Err(StoreError::Other("a fault in the program".to_owned())));
    let end = if result.is_ok() { "RELEASE work" } else { "ROLLBACK TO work; RELEASE work" };
    connection.execute_batch(end)?;
    result
}
