/**
 * Routes and pages. It alone knows the web server and the templates; it renders reports and
 * computes nothing of its own.
 */
@NullMarked
package standstill.web;

import org.jspecify.annotations.NullMarked;
