"""Results laid out for people: plain text, HTML, and plain data for JSON."""
