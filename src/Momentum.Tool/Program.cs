Console.WriteLine("momentum");
