"""Shapes of the JSON documents that commands print with --json, as JSON Schemas."""
