# What one does with this project. Every target works on a fresh clone: it makes .venv first, once.
#
#   make demo         work out and draw the example cart
#   make test         everything the project is held to: format, lint, types, imports, tests
#   make check        the quick half of that: format, lint, types, imports
#   make bench        how fast it starts
#   make reference    rewrite docs/reference from the program itself
#   make constraints  pin the newest versions of everything in constraints.txt
#   make clean        remove what these targets made

PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PIP := $(BIN)/python -m pip --quiet --quiet --disable-pip-version-check
RUNTIME := $(VENV)/.runtime
TEST := $(VENV)/.test
DEMO := build-demo

# These would send pip's work somewhere else than .venv; where packages come from stays as you have set it.
unexport PIP_USER PIP_TARGET PIP_PREFIX PIP_ROOT PIP_REQUIREMENT PIP_EDITABLE PIP_DRY_RUN PIP_REPORT
# These would let another Python's packages in.
unexport PYTHONHOME PYTHONPATH VIRTUAL_ENV

.PHONY: demo test check bench reference constraints clean
.DEFAULT_GOAL := demo
.DELETE_ON_ERROR:

demo: $(RUNTIME)
	@sh scripts/demo.sh $(BIN) $(DEMO)

test: $(TEST)
	@echo "== Format, lint, types, imports and every test (ten minutes or so on two cores: 20,000 build files gone wrong are among them)"
	@$(BIN)/python -m pytest -n auto

check: $(TEST)
	@echo "== Format"
	@$(BIN)/python -m ruff format --check .
	@echo "== Lint"
	@$(BIN)/python -m ruff check .
	@echo "== Types"
	@$(BIN)/python -m mypy
	@echo "== Imports"
	@$(BIN)/lint-imports
	@echo "== Sizes"
	@$(BIN)/python -m scripts.sizes

bench: $(TEST)
	@$(BIN)/python -m benchmarks.start

reference: $(RUNTIME)
	@$(BIN)/python -m scripts.reference

constraints:
	@sh scripts/constraints.sh "$(PYTHON)"

clean:
	rm -rf $(VENV) $(DEMO) build dist .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis
	find src tests scripts benchmarks -name __pycache__ -type d -prune -exec rm -rf {} +

$(BIN)/python:
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
	  echo "curbwright needs Python 3.11 or newer; '$(PYTHON)' is not. Try: make PYTHON=python3.11" >&2; exit 1; }
	@echo "== Making $(VENV) with $$($(PYTHON) --version)"
	@$(PYTHON) -m venv $(VENV) || { \
	  echo "Python could not make $(VENV). On Debian: apt-get install python3-venv" >&2; rm -rf $(VENV); exit 1; }

$(RUNTIME): $(BIN)/python pyproject.toml constraints.txt
	@echo "== Installing curbwright into $(VENV), versions as in constraints.txt (up to a minute, the first time)"
	@$(PIP) install --constraint constraints.txt hatchling editables
	@$(PIP) install --constraint constraints.txt --no-build-isolation --editable .
	@touch $@

$(TEST): $(RUNTIME)
	@echo "== Installing what the tests need (a minute or two, the first time)"
	@$(BIN)/python -c 'import tomllib; project = tomllib.load(open("pyproject.toml", "rb"))["project"]; \
	  print(*project["optional-dependencies"]["test"], sep="\n")' > $(VENV)/test.txt
	@$(PIP) install --constraint constraints.txt --requirement $(VENV)/test.txt
	@touch $@
