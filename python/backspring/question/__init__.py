"""One module a question that a design is asked."""
