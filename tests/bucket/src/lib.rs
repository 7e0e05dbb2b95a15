//! A server of the S3 interface over a folder, which lets one request in so many fail.

use http::{Response, StatusCode};
use hyper_util::rt::TokioIo;
use s3s::service::{S3Service, S3ServiceBuilder};
use std::net::SocketAddr;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Keys of the server; signatures are checked.
pub const ACCESS_KEY: &str = "meadow";
/// See [`ACCESS_KEY`].
pub const SECRET_KEY: &str = "clover-and-daisies";

/// A running server; it ends with this value.
pub struct Server {
    /// Where it listens.
    pub address: SocketAddr,
    requests: Arc<AtomicUsize>,
    refused: Arc<AtomicUsize>,
    _runtime: tokio::runtime::Runtime,
}

impl Server {
    /// Serves the folders below `root` as buckets. Of `one_in` requests one is refused, 0 for none.
    pub fn start(root: &Path, one_in: usize) -> Self {
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(1)
            .enable_all()
            .build()
            .expect("a runtime");
        let service = {
            let mut builder = S3ServiceBuilder::new(s3s_fs::FileSystem::new(root).expect("a folder"));
            builder.set_auth(s3s::auth::SimpleAuth::from_single(ACCESS_KEY, SECRET_KEY));
            builder.build()
        };
        let listener = runtime
            .block_on(tokio::net::TcpListener::bind(("127.0.0.1", 0)))
            .expect("a free port");
        let address = listener.local_addr().expect("an address");
        let (requests, refused) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
        let counts = (Arc::clone(&requests), Arc::clone(&refused));
        runtime.spawn(async move {
            while let Ok((socket, _)) = listener.accept().await {
                let (service, counts) = (service.clone(), counts.clone());
                tokio::spawn(async move {
                    let answer = hyper::service::service_fn(move |request| {
                        answer(service.clone(), counts.clone(), one_in, request)
                    });
                    // A connection that the other side drops is nobody's fault.
                    let _ = hyper::server::conn::http1::Builder::new()
                        .serve_connection(TokioIo::new(socket), answer)
                        .await;
                });
            }
        });
        Self {
            address,
            requests,
            refused,
            _runtime: runtime,
        }
    }

    /// Requests that came.
    pub fn requests(&self) -> usize {
        self.requests.load(Ordering::SeqCst)
    }

    /// Requests that were refused.
    pub fn refused(&self) -> usize {
        self.refused.load(Ordering::SeqCst)
    }
}

async fn answer(
    service: S3Service,
    (requests, refused): (Arc<AtomicUsize>, Arc<AtomicUsize>),
    one_in: usize,
    request: http::Request<hyper::body::Incoming>,
) -> Result<http::Response<s3s::Body>, s3s::HttpError> {
    let number = requests.fetch_add(1, Ordering::SeqCst);
    // Spread by the golden ratio: no rhythm that a caller could fall into.
    if one_in > 0 && (number.wrapping_mul(2_654_435_761) >> 7).is_multiple_of(one_in) {
        refused.fetch_add(1, Ordering::SeqCst);
        let mut response = Response::new(s3s::Body::empty());
        *response.status_mut() = StatusCode::SERVICE_UNAVAILABLE;
        return Ok(response);
    }
    hyper::service::Service::call(&service, request).await
}
