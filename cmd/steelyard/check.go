package main

import (
	"errors"
	"fmt"

	"steelyard/mechanism"
	"steelyard/sheet"
)

type checkVerb struct {
	Files []string `arg:"" name:"file" help:"Sheets; - for standard input."`
}

func (v *checkVerb) Run(c *console) error {
	var faults []error
	for _, file := range v.Files {
		if err := check(c, file); err != nil {
			faults = append(faults, err)
		}
	}
	return errors.Join(faults...)
}

// check says what was understood of one sheet, whatever its kind.
func check(c *console, file string) error {
	doc, err := c.readSheet(file)
	if err != nil {
		return err
	}
	if doc.Kind == sheet.KindPerson {
		return checkPerson(c, doc)
	}
	return checkMachine(c, doc)
}

func checkPerson(c *console, doc *sheet.Document) error {
	p, err := doc.Person()
	if err != nil {
		return err
	}
	e, err := p.Explain()
	if err != nil {
		return err
	}
	fmt.Fprint(c.out, e)
	return nil
}

// checkMachine also tries the machine, as set by default, from stop to stop.
func checkMachine(c *console, doc *sheet.Document) error {
	m, err := doc.Machine()
	if err != nil {
		return err
	}
	b, err := m.Build(nil)
	if err != nil {
		return err
	}
	fmt.Fprint(c.out, b.Explain())
	md, err := mechanism.Compile(b.Machine)
	if err != nil {
		return m.Locate(err)
	}
	sw, err := md.Sweep(tryPositions)
	if err != nil {
		return m.Locate(err)
	}
	fmt.Fprintln(c.out, travelled(m, sw))
	return nil
}

// tryPositions is how finely check goes through the travel.
const tryPositions = 51

// travelled says whether the machine could be followed from stop to stop.
func travelled(m *sheet.Machine, sw *mechanism.Sweep) string {
	for _, stop := range sw.Stops {
		if stop != nil {
			return fmt.Sprintf("Part of the travel fails: %v.", m.Locate(stop))
		}
	}
	return fmt.Sprintf("It moves from stop to stop; the contact travels %.0f mm.", 1000*sw.Travel[sw.Len()-1])
}
