package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"steelyard/sheet"
)

// largest is more than any sheet may be; the reader itself refuses at less.
const largest = 1 << 20

// readSheet reads a sheet from a file, or from standard input for "-".
func (c *console) readSheet(file string) (*sheet.Document, error) {
	name, data, err := file, []byte(nil), error(nil)
	if file == "-" {
		name = "standard input"
		data, err = io.ReadAll(io.LimitReader(c.in, largest))
	} else {
		data, err = readFile(file)
	}
	if err != nil {
		return nil, err
	}
	return sheet.Read(name, data)
}

func readFile(file string) ([]byte, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, unreadable(file, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s: is a folder, not a sheet; name a file in it", file)
	}
	data, err := io.ReadAll(io.LimitReader(f, largest))
	if err != nil {
		return nil, unreadable(file, err)
	}
	return data, nil
}

func unreadable(file string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file; check the name and the folder", file)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: may not be read by you; change its permissions or copy it", file)
	}
	return fmt.Errorf("%s: cannot be read: %w; check the disk", file, err)
}

// readMachine reads a machine sheet.
func (c *console) readMachine(file string) (*sheet.Machine, error) {
	doc, err := c.readSheet(file)
	if err != nil {
		return nil, err
	}
	return doc.Machine()
}

// readPerson reads a person sheet.
func (c *console) readPerson(file string) (*sheet.Person, error) {
	doc, err := c.readSheet(file)
	if err != nil {
		return nil, err
	}
	return doc.Person()
}
