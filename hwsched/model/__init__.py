"""The project as it is held: tables, journal, opening and migrating, queries. No verb, no calculation."""
