"""One grid for all places: columns, order, groups, filters, selection by identity, edits of one or many cells."""
