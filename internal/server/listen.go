package server

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"strings"
	"time"
)

// DefaultAddress is where the page is if nobody says otherwise: on loopback, at
// a port that no service is registered for (IANA, from memory).
const DefaultAddress = "127.0.0.1:7391"

// otherPorts is how many ports after the default one are tried.
const otherPorts = 20

// Listen opens an address. If the default one is taken, one of the next ports
// is used; any other that is taken is an error with a cure.
func Listen(address string) (net.Listener, error) {
	l, err := net.Listen("tcp", address)
	if err == nil || address != DefaultAddress {
		return l, told(address, err)
	}
	host, port, _ := net.SplitHostPort(address) // a constant
	for i := 1; i <= otherPorts; i++ {
		var n int
		fmt.Sscan(port, &n)
		if l, e := net.Listen("tcp", net.JoinHostPort(host, fmt.Sprint(n+i))); e == nil {
			return l, nil
		}
	}
	return nil, told(address, err)
}

// told puts an error of opening an address into a sentence.
func told(address string, err error) error {
	var where *net.AddrError
	var name *net.DNSError
	switch {
	case err == nil:
		return nil
	case inUse(err):
		return fmt.Errorf("%s is already in use, perhaps by another Steelyard; close that, or name another port with --listen 127.0.0.1:0", address)
	case errors.Is(err, os.ErrPermission):
		return fmt.Errorf("%s may not be opened by you; name a port above 1023 with --listen", address)
	case errors.As(err, &where), errors.As(err, &name):
		return fmt.Errorf("%q is no address to listen at; write host:port, such as 127.0.0.1:7391", address)
	}
	return fmt.Errorf("%s cannot be opened (%w); name another address with --listen", address, err)
}

// Hosts lists the host:port pairs under which a listener may be asked: what
// the person who started the program would type. On all interfaces these are
// the machine's own addresses and its name.
func Hosts(l net.Listener) []string {
	address, ok := l.Addr().(*net.TCPAddr)
	if !ok {
		return []string{l.Addr().String()}
	}
	port := fmt.Sprint(address.Port)
	var names []string
	switch {
	case address.IP.IsLoopback():
		names = []string{address.IP.String(), "localhost"}
	case address.IP.IsUnspecified():
		names = append(ownNames(), "127.0.0.1", "localhost", "::1")
	default:
		names = []string{address.IP.String()}
	}
	var out []string
	for _, n := range names {
		out = append(out, strings.ToLower(net.JoinHostPort(n, port)))
	}
	return out
}

// ownNames lists the addresses of this machine's interfaces and its name.
func ownNames() []string {
	var out []string
	if addresses, err := net.InterfaceAddrs(); err == nil {
		for _, a := range addresses {
			if n, ok := a.(*net.IPNet); ok && !n.IP.IsLoopback() && !n.IP.IsLinkLocalUnicast() {
				out = append(out, n.IP.String())
			}
		}
	}
	if name, err := os.Hostname(); err == nil {
		out = append(out, name, name+".local")
	}
	return out
}

// Limits on the time a connection may take. Events lift the limit on writing
// for themselves.
const (
	headerTime = 5 * time.Second
	readTime   = 2 * time.Minute // an archive over a slow network
	writeTime  = 2 * time.Minute
	idleTime   = 2 * time.Minute
	stopTime   = 5 * time.Second // for answers under way when the program stops
	mostHeader = 32 << 10
)

// Serve answers until the context ends, then lets answers under way finish.
func Serve(ctx context.Context, l net.Listener, h http.Handler) error {
	running, stop := context.WithCancel(context.WithoutCancel(ctx))
	defer stop()
	srv := &http.Server{Handler: h, ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime, IdleTimeout: idleTime,
		MaxHeaderBytes: mostHeader, BaseContext: func(net.Listener) context.Context { return running }}
	done := make(chan error, 1)
	go func() { done <- srv.Serve(l) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	// Long work ends at once; what is short ends by itself.
	grace, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
	defer cancel()
	time.AfterFunc(stopTime/2, stop)
	err := srv.Shutdown(grace)
	if errors.Is(err, context.DeadlineExceeded) {
		err = srv.Close()
	}
	<-done // http.ErrServerClosed
	return err
}
