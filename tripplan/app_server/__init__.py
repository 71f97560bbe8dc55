"""What stands between the network and the pages: who is answered, and which headers answers carry."""
