# The binary that is shipped, with the app in it.
shipped
