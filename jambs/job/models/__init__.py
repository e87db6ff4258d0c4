"""What a job file may say, as models; and the job with every name looked up."""
