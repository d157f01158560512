# make demo   reads the invented clippings file and answers three questions from it
# make test   runs every check
# Both make their own virtual environment from the lock files and can be run again at any time.

PYTHON ?= python3
DEMO_FOLDER ?= demo-clippings
export PIP_DISABLE_PIP_VERSION_CHECK = 1
export PYTHONDONTWRITEBYTECODE = 1

.PHONY: demo test check gates lock clean chromium

demo: .venv-run/installed
	.venv-run/bin/adminer demo --folder $(DEMO_FOLDER)

test: .venv-dev/installed chromium
	.venv-dev/bin/python -m tests.run_all

chromium:
	@command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null || \
	if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
		apt-get update -qq && apt-get install -y -qq chromium >/dev/null; \
	else echo "No Chromium here: the browser tests will be left out and named at the end."; fi

# --no-deps: the lock file is complete, and one package of it asks for the OpenCV build with windows, which a bare machine cannot load.
.venv-run/installed: requirements.lock pyproject.toml
	$(PYTHON) -m venv --clear .venv-run
	.venv-run/bin/python -m pip install -q --no-deps --require-hashes -r requirements.lock
	.venv-run/bin/python -m pip install -q --no-deps --no-build-isolation -e .
	@touch $@

.venv-dev/installed: requirements-dev.lock pyproject.toml
	$(PYTHON) -m venv --clear .venv-dev
	.venv-dev/bin/python -m pip install -q --no-deps --require-hashes -r requirements-dev.lock
	.venv-dev/bin/python -m pip install -q --no-deps --no-build-isolation -e .
	@touch $@

LOCK = uv pip compile pyproject.toml --universal --python-version 3.11 --generate-hashes --no-emit-index-url --no-header --quiet

lock:
	$(LOCK) --group build --output-file requirements.lock
	$(LOCK) --group build --group dev --output-file requirements-dev.lock

clean:
	rm -rf .venv-run .venv-dev $(DEMO_FOLDER) .mypy_cache .ruff_cache .pytest_cache
