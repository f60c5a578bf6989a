//! The screens. A view holds no formula; a change goes through [`session`]; all words are in [`words`].

mod ask;
mod batch;
mod batches;
mod bench;
mod clock;
mod drafts;
mod gear;
mod notices;
mod now;
mod parts;
mod priming;
mod route;
mod session;
mod shell;
mod stem_input;
mod sugar_ask;
mod words;
mod write;

pub use shell::mount;
