//! Starts the app.

fn main() {
    shimwright_web::app::start();
}
