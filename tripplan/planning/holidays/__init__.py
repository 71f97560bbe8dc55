"""Public and school holidays and local days, where and when."""
