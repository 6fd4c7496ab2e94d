# Every target works on a fresh machine with Python 3.11+, pip and make.
PYTHON ?= python3
BIN := .venv/bin
PYTEST_FLAGS ?= --numprocesses=auto

.DEFAULT_GOAL := help
.PHONY: help set-up app demo browser test check cover format bench pictures lock clean

help: ## Show this list.
	@echo 'Without make: python3 tools/set_up.py, then the commands that stand below a target in Makefile.'
	@grep -E '^[a-z-]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:.*## /\t/' | awk -F '\t' '{ printf "  make %-8s %s\n", $$1, $$2 }'

set-up: ## Make .venv with the locked libraries and plankwright itself (when they changed).
	@$(PYTHON) tools/set_up.py

app: set-up ## Open the app: the whole job on this computer and on phones.
	$(BIN)/plankwright

demo: set-up ## Lay out the example job and leave its map, papers and lists in out/.
	$(BIN)/plankwright lay examples/village-hall --out out || [ $$? -eq 1 ] # "Not enough" is an answer too.

browser: set-up ## Bring a browser for the tests where there is none, if that can be done.
	@$(BIN)/python tools/find_browser.py

check: set-up ## Style, types and the order of the rooms.
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/lint-imports

test: check browser ## All checks, then all tests, those in a browser among them.
	$(BIN)/pytest $(PYTEST_FLAGS)

cover: set-up browser ## Which lines and branches the tests do not reach.
	$(BIN)/pytest --cov --cov-report=term-missing $(PYTEST_FLAGS)

format: set-up ## Put the code in order as far as a tool can.
	$(BIN)/ruff check --fix
	$(BIN)/ruff format

bench: set-up ## Measure the search on the instances of benchmarks/ and write docs/benchmarks.md; it takes long.
	$(BIN)/python -m benchmarks run --resume $(BENCH_FLAGS)
	$(BIN)/python -m benchmarks report

pictures: set-up browser ## Take a picture of every screen of the app into out/pictures, to look at.
	$(BIN)/python -m tools.picture_screens out/pictures

lock: set-up ## Write requirements/lock.txt anew; 'make lock LOCK_FLAGS=--upgrade' takes newer versions.
	$(BIN)/python tools/lock.py $(LOCK_FLAGS)

clean: ## Remove what these targets made.
	rm -rf .venv out build dist .coverage .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
