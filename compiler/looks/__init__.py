"""How cloth looks: names of colours and textures, and what is measured on colours."""
