package main

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"time"

	"steelyard/demo"
	"steelyard/internal/server"
	"steelyard/internal/server/page"
	"steelyard/internal/store"
)

// pageVerbs are the verbs about the page and its data.
type pageVerbs struct {
	Serve   serveVerb   `cmd:"" default:"withargs" help:"Open the page; steelyard alone does so too."`
	Backup  backupVerb  `cmd:"" help:"Write everything, histories too, to one file."`
	Restore restoreVerb `cmd:"" help:"Put a backup back in place of everything here."`
	Export  exportVerb  `cmd:"" help:"Write sheets and photos as a plain archive."`
	Import  importVerb  `cmd:"" help:"Take sheets and photos from archives, or single sheets."`
}

// dataFlag names the folder of the data.
type dataFlag struct {
	Data string `placeholder:"DIR" help:"Folder that the data lies in; by default steelyard in your configuration folder."`
}

// open opens the store, filled with the demo room the first time.
func (f dataFlag) open(ctx context.Context) (*store.Store, error) {
	folder := f.Data
	if folder == "" {
		base, err := os.UserConfigDir()
		if err != nil {
			return nil, fmt.Errorf("your configuration folder is not known (%w); name a folder with --data", err)
		}
		folder = filepath.Join(base, "steelyard")
	}
	st, err := store.Open(folder, time.Now)
	if err != nil {
		return nil, err
	}
	if err := st.FillDemo(ctx, demoFiles(), true); err != nil {
		st.Close()
		return nil, err
	}
	return st, nil
}

func demoFiles() []store.File {
	var out []store.File
	for _, f := range append(demo.Machines(), demo.People()...) {
		out = append(out, store.File(f))
	}
	return out
}

// rarely is how much garbage may gather, in percent of what is in use, before
// it is collected. A few MB are in use, and a drag leaves as much every second:
// at the usual 100 % the collector would take the second processor from the
// browser while a finger moves.
const rarely = 800

type serveVerb struct {
	dataFlag
	Listen string `default:"${address}" placeholder:"HOST:PORT" help:"Address of the page; 0.0.0.0:7391 lets phones on the same network in."`
}

// Run opens the page and answers until it is stopped.
func (v *serveVerb) Run(c *console) error {
	st, err := v.open(c.ctx)
	if err != nil {
		return err
	}
	defer st.Close()
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(rarely)
	}
	l, err := server.Listen(v.Listen)
	if err != nil {
		return err
	}
	hosts, token := server.Hosts(l), server.NewToken()
	handler := server.New(server.Config{Store: st, Page: page.Files(), Demo: demoFiles(), Engine: engine(), Hosts: hosts, Token: token, Now: time.Now,
		Log: slog.New(slog.NewTextHandler(c.err, &slog.HandlerOptions{Level: slog.LevelWarn}))})
	fmt.Fprintf(c.out, "Steelyard is open at\n")
	for _, h := range hosts {
		fmt.Fprintf(c.out, "  http://%s/#%s\n", h, token)
	}
	fmt.Fprintf(c.out, "Data: %s\nctrl-C stops it.\n", st.Folder())
	return server.Serve(c.ctx, l, handler)
}

// engine returns the version of the computation: of the source it was built
// from if that is known, else the digest of the program itself.
func engine() string {
	if info, ok := debug.ReadBuildInfo(); ok {
		version := map[string]string{}
		for _, s := range info.Settings {
			version[s.Key] = s.Value
		}
		if r := version["vcs.revision"]; r != "" && version["vcs.modified"] == "false" {
			return r
		}
	}
	name, err := os.Executable()
	if err != nil {
		return server.NewToken() // of this start alone
	}
	f, err := os.Open(name)
	if err != nil {
		return server.NewToken()
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return server.NewToken()
	}
	return strings.TrimLeft(hex.EncodeToString(sum.Sum(nil)), "0")
}
