"""The laws of the bag, each file a part: a function that takes a `Bag` and returns compiled or plain
functions of minute and state."""
