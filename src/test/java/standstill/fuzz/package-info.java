/**
 * Whatever comes from outside, bent until something gives: logs, bases, queries, codes, requests.
 *
 * <p>In every build each target is given the inputs beside it under {@code src/test/resources} and
 * a hundred or so that {@link standstill.fuzz.Bent} makes of them. With {@code mvn -P fuzz test}
 * Jazzer searches for new ones, guided by what of the program they reach; its tests are left out
 * otherwise, because its agent changes and slows every class of the process.
 */
package standstill.fuzz;
