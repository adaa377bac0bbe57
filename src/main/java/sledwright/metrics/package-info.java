/**
 * What a build is worth: memory speed, bandwidth, usable memory, throughput, power, and the price of drawing units
 * from lots. Pure functions of the facts; every figure that the program prints is computed here and nowhere else.
 */
package sledwright.metrics;
