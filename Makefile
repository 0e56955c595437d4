# make demo     a demonstration class in output/demo
# make test     everything that must hold before a change is merged
# make coverage which lines no test runs; fails below the floor that pyproject.toml states
# make prove    the longer proofs
# make mutants  how many breaks of the code its tests notice; ROOM=bank SEED=3 COUNT=40 JOBS=1
# make gallery  the pictures of output/gallery, which the README shows
# make golden   the pictures that tests/golden compares pages with, after a look at what differs
# make bench    what a class costs beside what it would cost otherwise; STUDENTS=300 for a large one
# All of them set up first what is missing; make PYTHON=/path/to/python3.12 setup picks a Python.

BIN = .venv/bin

.PHONY: setup demo test coverage prove mutants bench gallery golden clean

setup: .venv/ready

.venv/ready: pyproject.toml .ci/setup
	@sh .ci/setup "$(PYTHON)"

.venv/ready-to-test: .venv/ready
	@sh .ci/setup --for-tests

demo: setup
	@$(BIN)/probgen demo

test: .venv/ready-to-test
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/pytest -q -n auto --dist worksteal

coverage: .venv/ready-to-test
	$(BIN)/pytest -q -n auto --dist worksteal --cov --cov-report=term

prove: .venv/ready-to-test
	$(BIN)/pytest -q -n auto -m proof

mutants: .venv/ready-to-test
	@$(BIN)/python -m tests.mutants

bench: setup
	@$(BIN)/python tests/bench

gallery: .venv/ready-to-test
	@$(BIN)/python tests/gallery/make.py output/gallery

golden: .venv/ready-to-test
	@$(BIN)/python -m tests.golden.make

clean:
	rm -rf .venv
