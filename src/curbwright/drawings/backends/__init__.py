"""File formats a sheet can be written in: nothing here decides anything about the drawing."""
