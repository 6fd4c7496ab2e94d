// Keys for measuring with a thumb.
