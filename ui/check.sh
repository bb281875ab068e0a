#!/usr/bin/env bash
# Types, lint, unit tests and a fresh build of the page, which must be the one
# committed; then the page in a real browser. Needs Node and Debian's packages.
set -euo pipefail
cd "$(dirname "$0")"
npm ci --no-audit --no-fund
npm run types
npm run lint
npm test
npm run build
git diff --exit-code -- ../internal/server/page/dist
if ! command -v chromium > /dev/null; then
  apt-get update && apt-get install -y --no-install-recommends chromium
fi
npm run e2e
