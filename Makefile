# Fermentside: make serve, make test. Each target first installs what is missing, and says what.
#
#   make serve          the release build on http://localhost:8080 (PORT=..., HOST=...)
#   make test           everything that is checked, in the order of how soon it tells
#   make build          the page into dist/
#   make walk           a million steps at random over the page on paper
#   make fuzz           every reader of outside data, 10,000,000 texts (FUZZ_CASES=, FUZZ_SEED=)
#   make icons          public/*.png anew from public/icon.svg
#   make clean

PORT ?= 8080
HOST ?= 127.0.0.1

CACHE := $(HOME)/.cache/fermentside
export PATH := $(CACHE)/tools/bin:$(CACHE)/npm/bin:$(HOME)/.cargo/bin:$(PATH)
export FERMENTSIDE_AXE ?= $(CACHE)/npm/lib/node_modules/axe-core/axe.min.js

SAY = @echo "==>"

# One thing after another: cargo already uses every core, and the first failure should be the last line.
.NOTPARALLEL:

.PHONY: serve test build icons clean walk fuzz setup-rust setup-browser unit lint journeys

serve: build
	cargo build --quiet --locked --no-default-features --bin serve
	HOST=$(HOST) target/debug/serve dist $(PORT)

test: setup-rust setup-browser unit lint build weigh journeys
	$(SAY) "all passed"

unit: setup-rust
	$(SAY) "formatting and tests without a browser"
	cargo fmt --check
	cargo test --locked --no-default-features

lint: setup-rust
	$(SAY) "lints, native and for the browser"
	cargo clippy --locked --all-targets --features journeys,weigh -- -D warnings
	cargo clippy --locked --lib --bins --target wasm32-unknown-unknown -- -D warnings

build: setup-rust
	$(SAY) "the page, as it is released"
	trunk build --release

weigh: build
	$(SAY) "what a first visit transfers"
	cargo run --quiet --locked --no-default-features --features weigh --bin weigh dist

journeys: build setup-browser
	$(SAY) "journeys in a real browser"
	cargo test --locked --no-default-features --features journeys --test journeys -- --test-threads=2

setup-rust:
	@.ci/setup rust

setup-browser:
	@.ci/setup browser

walk:
	WALK_STEPS=1000000 WALK_SEED=$$(date +%s) cargo test --locked --profile long --no-default-features --test app walk -- --nocapture

fuzz:
	FUZZ_CASES=$${FUZZ_CASES:-10000000} cargo test --locked --profile long --no-default-features --test exchange fuzz -- --nocapture

icons: setup-browser
	@.ci/setup icons

clean:
	cargo clean
	rm -rf dist
