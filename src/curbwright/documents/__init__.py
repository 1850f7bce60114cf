"""What is printed for people and for other programs."""
