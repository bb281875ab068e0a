// Command steelyard tells what a resistance machine asks of the body through
// its travel, from what a tape, a phone and a hanging scale say about it.
//
// Results go to standard output, messages to standard error. It exits with 0
// when done, 1 when the input is at fault, 2 when it was called wrongly.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"github.com/alecthomas/kong"

	"steelyard/internal/server"
)

// command is the whole command line.
type command struct {
	Evaluate evaluateVerb `cmd:"" help:"Compute the force at the contact through the travel of a machine."`
	Fit      fitVerb      `cmd:"" help:"Find the settings of a machine that fit a person."`
	People   peopleVerb   `cmd:"" help:"Say what share of people a machine fits, and what shuts out the rest."`
	Check    checkVerb    `cmd:"" help:"Say in plain words what was understood of sheets, and what is missing."`
	Sheet    sheetVerb    `cmd:"" help:"Print a commented example of a sheet, or its JSON Schema."`
	pageVerbs
}

const about = `What a resistance machine asks of the body through its travel, from what a tape, a phone and a hanging scale say about it.

A model, not a measurement of safety: keep to the machine maker's manual.`

const (
	exitDone  = 0
	exitInput = 1
	exitUsage = 2
)

// console is where a verb reads and writes.
type console struct {
	ctx      context.Context
	in       io.Reader
	out, err io.Writer
	progress bool // standard error is a terminal
}

func main() { os.Exit(run()) }

// run runs the command on the process's own streams and returns the exit code.
func run() int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	info, err := os.Stderr.Stat()
	terminal := err == nil && info.Mode()&os.ModeCharDevice != 0
	return execute(os.Args[1:], &console{ctx, os.Stdin, os.Stdout, os.Stderr, terminal})
}

// helped is raised when kong has printed help and wants to leave.
type helped struct{ code int }

// execute parses the arguments and runs the verb they name.
func execute(args []string, c *console) (code int) {
	defer func() {
		switch r := recover().(type) {
		case nil:
		case helped:
			code = r.code
		default:
			panic(r)
		}
	}()
	var cmd command
	parser := kong.Must(&cmd, kong.Name("steelyard"), kong.Description(about), kong.Writers(c.out, c.err),
		kong.Exit(func(code int) { panic(helped{code}) }), kong.UsageOnError(), kong.Vars{"address": server.DefaultAddress})
	call, err := parser.Parse(args)
	if err != nil {
		fmt.Fprintf(c.err, "steelyard: %v; see steelyard --help\n", err)
		return exitUsage
	}
	if err := call.Run(c); err != nil {
		return c.complain(err)
	}
	return exitDone
}

// complain prints the error, a line each, and returns its exit code.
func (c *console) complain(err error) int {
	var wrong *usageError
	switch {
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(c.err, "steelyard: stopped; nothing was written")
		return exitInput
	case errors.As(err, &wrong):
		fmt.Fprintf(c.err, "steelyard: %v\n", err)
		return exitUsage
	}
	for line := range strings.Lines(err.Error()) {
		fmt.Fprintln(c.err, strings.TrimRight(line, "\n"))
	}
	return exitInput
}

// usageError is a call that no input could make right.
type usageError struct{ problem string }

func (e *usageError) Error() string { return e.problem }
