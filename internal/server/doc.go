// Package server is the program's page and its API over HTTP, for the person at
// this machine.
//
// # Who is let in
//
// It listens on loopback unless told otherwise. A request is answered only if
//
//   - its Host is an address the program itself prints, so that another name
//     that resolves to this machine (DNS rebinding) gets nothing;
//   - it does not come from another site ([http.CrossOriginProtection], and by
//     its Origin where a line is opened);
//   - for the API, it carries the cookie that the page got for the token in the
//     printed address. The token stands behind the #, which browsers do not
//     send; the page trades it for the cookie and takes it out of the address.
//
// Pages may load nothing but this server's own files; no request leaves the
// machine.
//
// # Files
//
//	server.go  guard.go  session.go  answer.go   who is let in, what comes back
//	listen.go  inuse.go  static.go               the address, the page's files
//	room.go  sheets.go  history.go               what is stored
//	changes.go                                   what was changed, step by step
//	look.go  line.go  recent.go  evaluate.go     what is computed
//	photo.go  survey.go  family.go               building a machine
//	report.go  archive.go                        files to take away
//
// What is said is in package api, what is shown in package view.
package server
