"""What happens to each food on the way to the bowl, whether it comes out soft, and when each thing is done."""
