// Package contract writes what package api says in two other languages: the
// page's TypeScript types, and an OpenAPI 3.1 document. Shapes come from the Go
// types themselves, words from their comments.
package contract
