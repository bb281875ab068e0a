package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
	"slices"
)

//go:embed migrations/*.sql
var migrations embed.FS

// applicationID marks our files, so that another program's is not taken for one
// (sqlite.org, "PRAGMA application_id"): "Stly" in ASCII.
const applicationID = 0x53746c79

// migrate runs the numbered migrations that the file has not had yet, each once
// and in a transaction of its own. user_version counts them. It reports whether
// the file is new.
//
// A library for this was left out: one database, forward only, and the whole of
// it is this file.
func migrate(ctx context.Context, db *sql.DB, file string) (fresh bool, err error) {
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		return false, err
	}
	slices.Sort(names)
	has, err := layout(ctx, db, file)
	if err != nil {
		return false, err
	}
	if has > len(names) {
		return false, &NewerError{File: file, Has: has, Know: len(names)}
	}
	for i := has; i < len(names); i++ {
		if err := runMigration(ctx, db, i+1, names[i]); err != nil {
			return false, err
		}
	}
	return has == 0, nil
}

// layout returns how many migrations the file has had, and refuses a file of
// another program.
func layout(ctx context.Context, db *sql.DB, file string) (int, error) {
	var has, id, tables int
	err := db.QueryRowContext(ctx, `SELECT (SELECT user_version FROM pragma_user_version), (SELECT application_id FROM pragma_application_id), (SELECT count(*) FROM sqlite_schema)`).Scan(&has, &id, &tables)
	if err != nil {
		return 0, err
	}
	if id != applicationID && (id != 0 || has != 0 || tables != 0) {
		return 0, &TroubleError{Problem: file + " is a data file of another program", Cure: "name another folder with --data"}
	}
	return has, nil
}

// runMigration runs one, unless another process has done so meanwhile.
func runMigration(ctx context.Context, db *sql.DB, number int, name string) error {
	script, err := migrations.ReadFile(name)
	if err != nil {
		return err
	}
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	var has int
	if err := tx.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&has); err != nil || has >= number {
		return err
	}
	if _, err := tx.ExecContext(ctx, string(script)); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	if _, err := tx.ExecContext(ctx, fmt.Sprintf(`PRAGMA application_id = %d; PRAGMA user_version = %d`, applicationID, number)); err != nil {
		return err
	}
	return tx.Commit()
}
