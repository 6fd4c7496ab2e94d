"""The families of instances, each a module that makes an instance out of a seed."""
