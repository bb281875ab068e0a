#!/usr/bin/env bash
# Installs and builds the general-purpose engines, sweeps every machine through
# them and prints how well Steelyard agrees, then times one sweep beside theirs.
# Needs Debian 12 with Go, Node 20 and the right to install packages. An engine
# that is missing is a failure.
set -euo pipefail
cd "$(dirname "$0")"

packages=(g++ libsimbody-dev nlohmann-json3-dev python3-numpy python3-scipy)

installed() {
	for p in "${packages[@]}"; do
		dpkg-query -W -f='${Status}' "$p" 2>/dev/null | grep -q 'ok installed' || return 1
	done
}

# Another installation may hold the lists or the lock for a while.
install_packages() {
	for _ in 1 2 3 4 5 6; do
		if apt-get update -qq &&
			apt-get install -y -qq -o DPkg::Lock::Timeout=300 --no-install-recommends "${packages[@]}" >/dev/null; then
			return
		fi
		sleep 20
	done
	echo "run.sh: the packages could not be installed" >&2
	return 1
}

installed || install_packages
(cd mujoco && npm ci --silent --no-audit --no-fund)

compile() { # program source...
	g++ -std=c++17 -O2 -Wall -Wextra -Wno-missing-field-initializers -isystem /usr/include/simbody \
		-o "$@" -lSimTKsimbody -lSimTKmath -lSimTKcommon
}

mkdir -p build
compile build/simbody simbody/*.cc
compile build/body simbody/body/*.cc simbody/case.cc simbody/machine.cc

rm -f build/*.txt
status=0
go test -count=1 ./... || status=$?
cat build/*.txt || true
if [ "$status" -eq 0 ]; then
	go test -run '^$' -bench . ./...
fi
exit "$status"
