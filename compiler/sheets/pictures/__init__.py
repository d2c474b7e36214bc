"""The drawings that chapters show."""
