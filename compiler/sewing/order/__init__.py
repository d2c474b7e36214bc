"""The order of sewing: straight seams where there are any, else the fewest turns."""
