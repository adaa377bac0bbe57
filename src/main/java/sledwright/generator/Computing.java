package sledwright.generator;

/**
 * What the processors of a machine do.
 *
 * @param capacity what its cores do of the workload where memory feeds them; without a workload its throughput
 * @param worth    what the customer gives for its cores and throughput beyond the requirement, all machines, minor units
 */
record Computing(int cores, double throughput, double capacity, double worth) {
}
