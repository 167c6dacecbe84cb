//! Starts the app.

fn main() {
    shimwright_web::start::start();
}
