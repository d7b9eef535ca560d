"""Fitting a tang: allowance, plan, and the log of a knife."""
