package review

import "iter"

// Rows holds very many rows in little memory. One goroutine at a time may change
// it; the zero value is ready.
type Rows struct {
	shelf  shelf
	places places // of the paths, once Set needs them
}

// Add puts rows of other files behind those there are. It keeps no pointer to
// them.
func (rows *Rows) Add(list ...*Row) {
	for _, r := range list {
		rows.shelf.put(&entry{path: r.Path, row: *r})
	}
}

// Set puts each row in the place of the one of the same path, or behind the
// others.
func (rows *Rows) Set(list ...*Row) {
	for _, r := range list {
		for rows.places.n < rows.Len() {
			rows.places.add(rows.Path)
		}
		if i, known := rows.places.find(r.Path, rows.Path); known {
			rows.put(i, r)
			continue
		}
		rows.Add(r)
	}
}

// put puts a row in the place of another.
func (rows *Rows) put(i int, r *Row) {
	rows.shelf.refs[i] = rows.shelf.write(&entry{path: r.Path, row: *r})
}

// Len is how many rows there are.
func (rows *Rows) Len() int { return len(rows.shelf.refs) }

// At returns a row.
func (rows *Rows) At(i int) Row {
	var e entry
	rows.shelf.get(i, &e)
	return e.row
}

// Path returns the path of a row, which costs less than the row.
func (rows *Rows) Path(i int) string { return rows.shelf.path(i) }

// All goes through the rows. A row is to be copied by those who keep it: the next
// is put in its place.
func (rows *Rows) All() iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		var e entry
		for i := range rows.shelf.refs {
			if rows.shelf.get(i, &e); !yield(&e.row) {
				return
			}
		}
	}
}

// Pick goes through the rows at some places, as All does.
func (rows *Rows) Pick(places []int32) iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		var e entry
		for _, i := range places {
			if rows.shelf.get(int(i), &e); !yield(&e.row) {
				return
			}
		}
	}
}

// Snapshot returns the same rows. Changing one changes not the other, and another
// goroutine may have it.
func (rows *Rows) Snapshot() *Rows { return &Rows{shelf: rows.shelf.snapshot()} }
