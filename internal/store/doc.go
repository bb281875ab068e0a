// Package store keeps sheets and photos in one SQLite file, so that nothing
// once acknowledged is lost.
//
// # What is kept
//
// A sheet's text is the truth. Every save adds a revision; undoing and redoing
// add one too, so the history only grows, any state can be had back, and two
// pages that work on the same sheet find out: each write names the revision it
// was made from and is refused with a *[ConflictError] if that is no longer the
// newest. Removing a sheet hides it. Only [Store.Forget] erases.
//
// Photos are kept by their own SHA-256. Evaluations are kept with the digest of
// their input and the version of the engine, and can be thrown away any time.
//
// # How
//
// A method returns without error only after its transaction is on the disk:
// write-ahead log, synchronous FULL (sqlite.org, "PRAGMA synchronous"). The
// clock is given. Errors are sentences with a cure; see errors.go.
//
// The file is opened by nothing but SQLite: closing any other descriptor of it
// in this process would drop SQLite's own POSIX locks (sqlite.org, "How To
// Corrupt An SQLite Database File", section 2.2). Copies are made with VACUUM
// INTO.
//
//	store.go    migrate.go    open, bring up to date
//	sheet.go    history.go    heading.go   sheets and their revisions
//	photo.go    reading.go    evaluation.go
//	session.go  demo.go       who is let in; the first start
//	backup.go   restore.go    the whole file, exactly
//	archive.go  export.go  import.go   sheets and photos, readable without us
package store
