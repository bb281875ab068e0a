package server

import (
	"bytes"
	"compress/gzip"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"strings"

	"steelyard/internal/store"
)

// asset is a file of the page, ready to be sent.
type asset struct {
	kind    string
	tag     string
	data    []byte
	packed  []byte // gzip; nil if that makes it no smaller
	forever bool   // its name changes with its content
}

// static sends the page's files from memory.
type static map[string]asset

// newStatic reads and packs all files. The built page is a few hundred kB, so
// this takes some milliseconds once.
func newStatic(files fs.FS) static {
	s := static{}
	fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return nil
		}
		data, err := fs.ReadFile(files, name)
		if err != nil {
			return nil // an embedded file that is listed can be read
		}
		s["/"+name] = newAsset(name, data)
		return nil
	})
	return s
}

func newAsset(name string, data []byte) asset {
	kind := mime.TypeByExtension(path.Ext(name))
	if known := kinds[path.Ext(name)]; known != "" {
		kind = known
	}
	a := asset{kind: kind, tag: `"` + store.Digest(data)[:24] + `"`, data: data, forever: strings.HasPrefix(name, "assets/")}
	var b bytes.Buffer
	z, _ := gzip.NewWriterLevel(&b, gzip.BestCompression) // the level is a known one
	z.Write(data)
	z.Close()
	if b.Len() < len(data)*9/10 {
		a.packed = b.Bytes()
	}
	return a
}

// kinds are the media types of the page's files, which on some systems the
// registry gets wrong.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml",
	".json": "application/json", ".webmanifest": "application/manifest+json", ".woff2": "font/woff2", ".png": "image/png", ".ico": "image/x-icon", ".txt": "text/plain; charset=utf-8",
}

// ServeHTTP sends a file. Any other address gets the page itself, whose script
// reads the address.
func (s static) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "this address can only be read", http.StatusMethodNotAllowed)
		return
	}
	a, ok := s[r.URL.Path]
	if !ok && path.Ext(r.URL.Path) == "" {
		a, ok = s["/index.html"]
	}
	if !ok {
		http.Error(w, "there is nothing under this address", http.StatusNotFound)
		return
	}
	h := w.Header()
	h.Set("Content-Type", a.kind)
	h.Set("ETag", a.tag)
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", "no-cache") // asked again each time, and answered by the tag
	if a.forever {
		h.Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	if strings.Contains(r.Header.Get("If-None-Match"), a.tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	data := a.data
	if a.packed != nil && strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
		h.Set("Content-Encoding", "gzip")
		data = a.packed
	}
	if r.Method == http.MethodGet {
		w.Write(data)
	}
}
