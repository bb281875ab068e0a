// Package api is what the page and the server say to each other: the types of
// every request and answer, and the list of routes. The page's TypeScript types
// and the published OpenAPI document are written from it by package contract;
// a test refuses stale ones.
//
// # Conventions
//
// Bodies are JSON. Numbers are SI: m, kg, N, N·m, J, s, rad, in one ground
// frame: x forward, y up, seen from the person's right, counter-clockwise
// positive. Only a sheet's own text carries other units. A place is [x, y].
//
// A column has one entry for each position of its curve; null is a gap. Lists
// are never null. A field that may be left out is marked optional, one that may
// be null says so.
//
// Every write names the revision it was made from. If the sheet has moved on
// since, nothing is written and the answer is a [Problem] with code "conflict"
// that carries the sheet as it now stands.
//
// An error is a [Problem] with a status of 400 and above. A sheet that cannot
// be used is no error: its problems come back beside its text, so that it can
// be mended.
package api

//go:generate go run ./generate
