"""The design file: its keys, how they are read, and what is wrong with them."""
