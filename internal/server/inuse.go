package server

import (
	"errors"
	"syscall"
)

// wsaeaddrinuse is what Windows says for EADDRINUSE (winerror.h: WSAEADDRINUSE).
const wsaeaddrinuse = syscall.Errno(10048)

// inUse reports whether an address could not be opened because it is taken.
func inUse(err error) bool {
	return errors.Is(err, syscall.EADDRINUSE) || errors.Is(err, wsaeaddrinuse)
}
