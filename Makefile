# The commands of the project. `make help` lists them; each is a script under scripts/.
.DEFAULT_GOAL := help
.PHONY: help run test bench fuzz fmt

help: ## list these commands
	@grep -E '^[a-z]+:.*## ' $(MAKEFILE_LIST) | sed -E 's/^([a-z]+):.*## /  make \1\t/' | expand -t 16

run: ## build all, solve two examples into out/, and serve the app on this machine; SERVE=no does not serve
	@bash scripts/run.sh

test: ## every check there is; STEP="format clippy" runs only those
	@bash scripts/test.sh $(STEP)

bench: ## speed of our code, and the roof surface beside an outside skeleton library
	@bash scripts/bench.sh

fuzz: ## throw odd input at the job reader and the surface solver, and roof many houses; SECONDS_EACH=60 by default
	@bash scripts/fuzz.sh $(SECONDS_EACH)

fmt: ## lay out the code
	@cargo fmt --all && cargo fmt --manifest-path fuzz/Cargo.toml
