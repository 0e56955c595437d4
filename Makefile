# make demo     a demonstration class in output/demo
# make test     everything that must hold before a change is merged
# make coverage which lines no test runs; fails below the floor that pyproject.toml states
# make prove    the longer proofs
# make mutants  how many breaks of the code its tests notice; ROOM=bank SEED=3 COUNT=40 JOBS=1
# make gallery  the pictures of output/gallery, which the README shows
# make workings the workings that tests/wording keeps as text, to be read aloud
# make golden   the pictures that tests/golden compares pages with, after a look at what differs
# make fuzz    spoilt inputs of every kind; KINDS=templates,records SECONDS=60 COUNT=10000 SEED=fuzz
# make bench    what a class costs beside what it would cost otherwise, and how truly slips are named;
#               STUDENTS=300 LARGE=3000 PAPERS=10000 for the figures of the aims
# All of them set up first what is missing; make PYTHON=/path/to/python3.12 setup picks a Python.

BIN = .venv/bin
KINDS ?= templates,guide,sets,rosters,records,styles,banks,layouts,lines,answers,rules,marks,departments,reviews,releases,uses
SECONDS ?= 60
COUNT ?= 1000000
SEED ?= fuzz

.PHONY: setup fuzz demo test coverage prove mutants bench gallery golden workings clean

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
	$(BIN)/pytest -q -n auto --dist worksteal --cov --cov-report=term --hypothesis-profile=ci

prove: .venv/ready-to-test
	$(BIN)/pytest -q -n auto --dist worksteal -m proof

mutants: .venv/ready-to-test
	@$(BIN)/python -m tests.mutants

fuzz: .venv/ready-to-test
	@$(BIN)/python -m tests.fuzz --kinds $(KINDS) --seconds $(SECONDS) --count $(COUNT) --seed $(SEED)

bench: setup
	@sh .ci/setup --for-bench
	@$(BIN)/python -m tests.bench

gallery: .venv/ready-to-test
	@$(BIN)/python tests/gallery/make.py output/gallery

workings: .venv/ready-to-test
	@PYTHONPATH=. $(BIN)/python tests/wording/test_workings.py

golden: .venv/ready-to-test
	@$(BIN)/python -m tests.golden.make

clean:
	rm -rf .venv
