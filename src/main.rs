//! The page's binary: a readable panic, then the page.

fn main() {
    console_error_panic_hook::set_once();
    fermentside::page::mount();
}
