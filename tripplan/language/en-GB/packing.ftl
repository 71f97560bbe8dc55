packing-diapers = Nappies, wipes, changing mat, bags
packing-stroller = Pushchair
packing-lovey = Comforter and light blanket
packing-trash-bags = Bags for rubbish and travel sickness
packing-repellent = Insect repellent and long trousers
packing-phone = Charged telephone and cable
