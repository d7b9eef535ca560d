"""Outlines of springs and tangs: closed chains of lines and arcs, and what they say of a joint."""
