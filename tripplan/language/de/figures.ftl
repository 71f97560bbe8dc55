figures-span = { $low } bis { $high }
figures-odds = etwa { $of } von { $in_all }
figures-almost-none = so gut wie keine
figures-almost-certain = so gut wie sicher
